import cdf from '@stdlib/stats-base-dists-t-cdf';
import quantile from '@stdlib/stats-base-dists-t-quantile';
import { describe, expect, it } from 'vitest';
import { studentCdf, studentQuantile, studentTable } from '../../../lib/stats/wear/studentTable';

describe('studentTable', () => {
  it.each([1, 3, 4, 7, 30, 59, 60, 61, 300, 5000, 150_000])(
    'agrees with the distribution function, nu = %d',
    (nu) => {
      const table = studentTable(nu);
      let worst = 0;
      for (let k = -600; k <= 600; k++) {
        const z = (k / 600) ** 3 * 40;
        worst = Math.max(worst, Math.abs(studentCdf(table, z) - cdf(z, nu)));
      }
      expect(worst).toBeLessThan(1e-9);
      expect(studentCdf(table, 0)).toBeCloseTo(0.5, 10);
    },
  );

  it('keeps its place at infinity', () => {
    for (const nu of [3, 500]) {
      const table = studentTable(nu);
      expect(studentCdf(table, Number.POSITIVE_INFINITY)).toBe(1);
      expect(studentCdf(table, Number.NEGATIVE_INFINITY)).toBe(0);
    }
  });

  it('has the quantiles of the distribution', () => {
    for (const nu of [3, 12, 200]) {
      const table = studentTable(nu);
      for (const p of [1e-9, 0.001, 0.1, 0.5, 0.8, 0.999]) {
        expect(studentQuantile(table, p)).toBeCloseTo(quantile(p, nu), 5);
      }
    }
  });

  it('refuses degrees of freedom that are not positive', () => {
    expect(() => studentTable(0)).toThrow('studentTable requires positive degrees of freedom, got 0');
    expect(() => studentTable(Number.NaN)).toThrow('got NaN');
  });
});
