import { describe, expect, it } from 'vitest';
import { coverage } from '../../../lib/batch/calibrate/coverage';

describe('80 % intervals hold 80 % of the time', () => {
  it.each([
    [4, 500],
    [8, 250],
    [20, 100],
  ])(
    'groups of %d units',
    (units, fleets) => {
      const { runs, crossing, reading } = coverage(units, fleets, units);
      expect(runs).toBeGreaterThanOrEqual(2000);
      for (const share of [crossing / runs, reading / runs]) {
        expect(share).toBeGreaterThan(0.77);
        expect(share).toBeLessThan(0.83);
      }
    },
    240_000,
  );
});
