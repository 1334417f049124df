import { describe, expect, it } from 'vitest';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import { normalScores } from '../../../lib/stats/wear/normalScores';
import reference from '../../reference/small/normalScores.json';

describe('normalScores', () => {
  it.each(Object.keys(reference.cases))('meets the reference on %s', (name) => {
    const { values, w, p, digits } = reference.cases[name as keyof typeof reference.cases];
    const result = normalScores(values);
    expect((result?.correlation as number) ** 2).toBeCloseTo(w, digits);
    expect(result?.p).toBeCloseTo(p, digits);
  });

  it('finds normal values abnormal as often as it says', () => {
    const { normal } = seededDraws(11);
    for (const n of [8, 40, 300]) {
      const trials = 1500;
      let found = 0;
      for (let k = 0; k < trials; k++) {
        if ((normalScores(Array.from({ length: n }, normal))?.p ?? 0) < 0.05) found += 1;
      }
      // 0.05 plus and minus three standard errors and the formula's own 0.01.
      expect(Math.abs(found / trials - 0.05)).toBeLessThan(0.01 + 3 * Math.sqrt((0.05 * 0.95) / trials));
    }
  });

  it('finds heavy tails, does not depend on place and scale, and is null where it can say nothing', () => {
    const { normal } = seededDraws(12);
    const values = Array.from({ length: 60 }, () => normal() ** 3);
    const result = normalScores(values);
    expect(result?.p).toBeLessThan(1e-4);
    const moved = normalScores(values.map((value) => 7 + 0.01 * value));
    expect(moved?.correlation).toBeCloseTo(result?.correlation as number, 10);
    expect(normalScores([1, 2, 3, 4])).toBeNull();
    expect(normalScores([1, 1, 1, 1, 1, 1])).toBeNull();
  });
});
