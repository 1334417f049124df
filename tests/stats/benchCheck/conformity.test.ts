import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conformity, guardFactor } from '../../../lib/stats/benchCheck/conformity';

const plain = (value: number) => ({ lower_mm: value, upper_mm: value });
const range = { lower_mm: 0.18, upper_mm: 0.3 };

describe('a reading against a range, with the gauge’s uncertainty as guard band', () => {
  // Guard band 1.645 x 0.01 = 0.01645 mm either side of 0.18 and 0.30.
  it.each([
    [0.24, 'within'],
    [0.283, 'within'],
    [0.284, 'cannot be told apart'],
    [0.3, 'cannot be told apart'],
    [0.316, 'cannot be told apart'],
    [0.317, 'not within'],
    [0.197, 'within'],
    [0.196, 'cannot be told apart'],
    [0.163, 'not within'],
  ] as const)('%d mm against 0.18 to 0.30 mm at 0.01 mm is %s', (value, expected) => {
    expect(conformity(plain(value), range, 0.01)).toBe(expected);
  });

  it('takes the guard band of one-sided 95 %, and none where there is no uncertainty', () => {
    expect(guardFactor).toBeCloseTo(1.6449, 4);
    expect(conformity(plain(0.3), range, 0)).toBe('within');
    expect(conformity(plain(0.1 + 0.2), range, 0)).toBe('within');
    expect(conformity(plain(0.3001), range, 0)).toBe('not within');
  });

  it('an interval counts by its middle and its width squared / 12; one without an upper end bounds from below', () => {
    // 0.24 to 0.28: sd = 0.04 / sqrt 12 = 0.01155, guard 0.0190.
    expect(conformity({ lower_mm: 0.24, upper_mm: 0.28 }, { lower_mm: null, upper_mm: 0.2791 }, 0)).toBe(
      'within',
    );
    expect(conformity({ lower_mm: 0.24, upper_mm: 0.28 }, { lower_mm: null, upper_mm: 0.2789 }, 0)).toBe(
      'cannot be told apart',
    );
    const open = { lower_mm: 0.4, upper_mm: null };
    expect(conformity(open, { lower_mm: 0.35, upper_mm: null }, 0.01)).toBe('within');
    expect(conformity(open, { lower_mm: null, upper_mm: 0.35 }, 0.01)).toBe('not within');
    expect(conformity(open, { lower_mm: null, upper_mm: 0.75 }, 0.01)).toBe('cannot be told apart');
  });

  it('what is said keeps to what a plain comparison says, and more uncertainty never says more', () => {
    const length = fc.double({ min: 0, max: 2, noNaN: true });
    fc.assert(
      fc.property(length, length, length, length, length, (value, a, b, u, more) => {
        const own = { lower_mm: Math.min(a, b), upper_mm: Math.max(a, b) };
        const told = conformity(plain(value), own, u);
        const isInside = value >= own.lower_mm - 1e-9 && value <= own.upper_mm + 1e-9;
        if (told === 'within') expect(isInside).toBe(true);
        if (told === 'not within') expect(value >= own.lower_mm && value <= own.upper_mm).toBe(false);
        const wider = conformity(plain(value), own, u + more);
        expect([told, 'cannot be told apart']).toContain(wider);
      }),
    );
  });

  it('throws on an uncertainty that is none', () => {
    expect(() => conformity(plain(1), range, Number.NaN)).toThrow('0 mm or more');
    expect(() => conformity(plain(1), range, -1)).toThrow('0 mm or more');
  });
});
