import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hoursOutOfOrder } from '../../lib/records/hoursInOrder';

function isNondecreasing(values: readonly number[]): boolean {
  return values.every((value, index) => index === 0 || (values[index - 1] as number) <= value);
}

/** Fewest entries to remove, by trying every subset. */
function fewestByTrying(values: readonly number[]): number {
  let best = values.length;
  for (let subset = 0; subset < 1 << values.length; subset++) {
    const kept = values.filter((_, index) => (subset >> index) & 1);
    if (isNondecreasing(kept)) best = Math.min(best, values.length - kept.length);
  }
  return best;
}

describe('hoursOutOfOrder', () => {
  it('names the fewest entries that leave the rest rising (all subsets tried)', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 9 }), (hours) => {
        const held = new Set(hoursOutOfOrder(hours));
        expect(isNondecreasing(hours.filter((_, index) => !held.has(index)))).toBe(true);
        expect(held.size).toBe(fewestByTrying(hours));
      }),
      { numRuns: 300 },
    );
  });

  it('of two that contradict each other keeps the earlier', () => {
    expect(hoursOutOfOrder([9840, 0])).toEqual([1]);
  });

  it('finds the one figure typed too high rather than all that follow it', () => {
    expect(hoursOutOfOrder([9840, 191200, 28000, 39000])).toEqual([1]);
  });
});
