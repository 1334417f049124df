import fc from 'fast-check';
import { expect, test } from 'vitest';
import { newtonRoot } from '../../../lib/stats/wear/newtonRoot';
import { evenly } from './evenly';

test('a good guess takes three looks for the cube root of 2 to 12 digits', () => {
  let [looks, at] = [0, 0];
  const cube = (x: number) => {
    [looks, at] = [looks + 1, x];
    return x ** 3 - 2;
  };
  expect(newtonRoot(cube, () => 3 * at * at, 1.26, 0, 3, true, 1e-7)).toBeCloseTo(2 ** (1 / 3), 12);
  expect(looks).toBeLessThanOrEqual(3);
});

test('whatever the guess, bend and side, and without a slope, the root is within the tolerance', () => {
  fc.assert(
    fc.property(
      evenly(-5, 5),
      evenly(0.1, 9),
      evenly(0.1, 9),
      evenly(0.3, 4),
      evenly(-20, 20),
      fc.boolean(),
      fc.constantFrom('right', 'zero'),
      (root, below, above, bend, guess, rises, given) => {
        const sign = rises ? 1 : -1;
        let at = 0;
        const valueAt = (x: number) => {
          at = x;
          return sign * Math.sign(x - root) * Math.abs(x - root) ** bend;
        };
        const slopes = {
          right: () => sign * bend * Math.abs(at - root) ** (bend - 1),
          zero: () => 0,
        };
        const found = newtonRoot(valueAt, slopes[given], guess, root - below, root + above, rises, 1e-9);
        // Where the curve is flat at its root (bend 4) steps shrink by a quarter, so what is left is some steps.
        expect(Math.abs(found - root)).toBeLessThan(1e-8);
      },
    ),
    { seed: 9, numRuns: 500 },
  );
});
