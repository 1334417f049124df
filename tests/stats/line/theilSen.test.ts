import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { theilSen } from '../../../lib/stats/line/theilSen';
import reference from '../../reference/small/theilSen.json';

describe('theilSen', () => {
  it.each(['hollander_wolfe_cloud_seeding', 'clearance_one_blunder'] as const)(
    'meets the reference on %s to 1e-12',
    (name) => {
      const { x, y, theil_slope, intercept_median_resid } = reference[name];
      const line = theilSen(x, y);
      expect(line?.slope).toBeCloseTo(theil_slope, 12);
      expect(line?.intercept).toBeCloseTo(intercept_median_resid, 12);
    },
  );

  it('is not turned by one wild reading of at least 7, whatever its size', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 7, max: 12 }),
        fc.nat(11),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (n, wild, size) => {
          const x = Array.from({ length: n }, (_, k) => k);
          const y = x.map((value, k) => 0.2 + 0.08 * value + (k === wild % n ? size : 0));
          const line = theilSen(x, y);
          expect(line?.slope).toBeCloseTo(0.08, 9);
          expect(line?.intercept).toBeCloseTo(0.2, 8);
        },
      ),
      { seed: 4, numRuns: 300 },
    );
  });

  it('lies between the smallest and the largest slope of two readings and has half the residuals on each side', () => {
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 20 }), fc.integer({ min: -50, max: 50 })), {
      minLength: 2,
      maxLength: 10,
    });
    fc.assert(
      fc.property(points, (pairs) => {
        const [x, y] = [pairs.map(([px]) => px), pairs.map(([, py]) => py)];
        const line = theilSen(x, y);
        if (line === null) return new Set(x).size < 2;
        const slopes = pairs.flatMap(([xa, ya]) =>
          pairs.filter(([xb]) => xb > xa).map(([xb, yb]) => (yb - ya) / (xb - xa)),
        );
        const under = slopes.filter((slope) => slope < line.slope - 1e-9).length;
        const over = slopes.filter((slope) => slope > line.slope + 1e-9).length;
        expect(Math.max(under, over)).toBeLessThanOrEqual(slopes.length / 2);
        const residuals = y.map((v, k) => v - line.intercept - line.slope * (x[k] as number));
        expect(residuals.filter((r) => r > 1e-9).length).toBeLessThanOrEqual(residuals.length / 2);
        expect(residuals.filter((r) => r < -1e-9).length).toBeLessThanOrEqual(residuals.length / 2);
        return true;
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('is null without two distinct x and never gives a number that is not finite', () => {
    expect(theilSen([], [])).toBeNull();
    expect(theilSen([1], [2])).toBeNull();
    expect(theilSen([1, 1, 1], [2, 3, 4])).toBeNull();
    expect(() => theilSen([1, 2], [1])).toThrow('got 2 and 1');
    expect(theilSen([1e300, 1.0000000001e300], [0, 1e300])).toBeNull();
    expect(theilSen([-1e308, 0, 1e308], [-1e308, 0, 1e308])).toBeNull();
    const value = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(value, value), { maxLength: 6 }), (pairs) => {
        const line = theilSen(
          pairs.map(([x]) => x),
          pairs.map(([, y]) => y),
        );
        return line === null || (Number.isFinite(line.slope) && Number.isFinite(line.intercept));
      }),
      { seed: 6, numRuns: 1000 },
    );
  });
});
