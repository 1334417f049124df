import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot } from '../../../lib/stats/wear/findRoot';
import { evenly } from './evenly';

describe('findRoot', () => {
  it('finds the roots of functions whose roots are known, in few steps', () => {
    const counted = (valueAt: (x: number) => number) => {
      let count = 0;
      const counting = (x: number) => {
        count += 1;
        return valueAt(x);
      };
      return { root: findRoot(counting, 0, 3, 1e-12), count };
    };
    const cube = counted((x) => x ** 3 - 2);
    expect(cube.root).toBeCloseTo(2 ** (1 / 3), 11);
    expect(cube.count).toBeLessThan(16);
    expect(counted((x) => Math.cos(x)).root).toBeCloseTo(Math.PI / 2, 11);
    const step = counted((x) => (x < 1.25 ? -1e-9 : 1));
    expect(step.root).toBeCloseTo(1.25, 10);
  });

  it('stays inside the bracket and within the tolerance', () => {
    fc.assert(
      fc.property(
        evenly(-5, 5),
        evenly(0.1, 9),
        evenly(0.1, 9),
        evenly(0.2, 4),
        (root, below, above, bend) => {
          const valueAt = (x: number) => Math.sign(x - root) * Math.abs(x - root) ** bend;
          const found = findRoot(valueAt, root - below, root + above, 1e-9);
          expect(Math.abs(found - root)).toBeLessThan(2e-9);
        },
      ),
      { seed: 7 },
    );
  });

  it('takes an end that is a root, and refuses a bracket without a change of sign', () => {
    expect(findRoot((x) => x, 0, 1, 1e-9)).toBe(0);
    expect(findRoot((x) => x - 1, 0, 1, 1e-9)).toBe(1);
    expect(() => findRoot((x) => x * x + 1, -1, 1, 1e-9)).toThrow('values of opposite sign, got 2 and 2');
  });
});
