import fc from 'fast-check';
import { expect, it } from 'vitest';
import { largestGap } from '../../../lib/analysis/circle/largestGap';

const reading = fc.integer({ min: -50, max: 300 }).map((hundredths) => hundredths / 100);
const keys = ['c12', 'c3', 'c6', 'c9'] as const;

it('is the largest read; a missing position is the one that makes opposite pairs have equal sums', () => {
  expect(largestGap({ c12: 1.1, c3: 0.9, c6: 0.7, c9: 0.95 })).toBe(1.1);
  expect(largestGap({ c12: null, c3: 1, c6: 0.7, c9: 0.9 })).toBeCloseTo(1.2, 12);
  expect(largestGap({ c12: 0.7, c3: null, c6: 1, c9: 0.4 })).toBeCloseTo(1.3, 12);
  expect(largestGap({ c12: 1, c3: null, c6: null, c9: 1 })).toBeNull();
});

it('with any one position left out is the same where there is no ovality', () => {
  fc.assert(
    fc.property(reading, reading, reading, fc.constantFrom(...keys), (c12, c3, c6, missing) => {
      const whole = { c12, c3, c6, c9: c12 + c6 - c3 };
      expect(largestGap({ ...whole, [missing]: null })).toBeCloseTo(largestGap(whole) ?? 0, 10);
    }),
  );
});
