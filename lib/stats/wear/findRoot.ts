const MOST_STEPS = 100;

/**
 * Root of a continuous function between two points where it has opposite signs: inverse quadratic interpolation
 * where that is safe, bisection otherwise, until the bracket is narrower than the tolerance.
 *
 * Chandrupatla 1997, Advances in Engineering Software 28(3), 145-149. Throws if the signs agree.
 */
export function findRoot(
  valueAt: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
  valueLow = valueAt(low),
  valueHigh = valueAt(high),
): number {
  if (valueLow === 0) return low;
  if (valueHigh === 0) return high;
  if (valueLow > 0 === valueHigh > 0) {
    throw new Error(`findRoot requires values of opposite sign, got ${valueLow} and ${valueHigh}`);
  }
  let a = high;
  let fa = valueHigh;
  let b = low;
  let fb = valueLow;
  let share = fa / (fa - fb);
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = a + share * (b - a);
    const fx = valueAt(x);
    const [c, fc] = fx > 0 === fa > 0 ? [a, fa] : [b, fb];
    if (fx > 0 !== fa > 0) {
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const smallest = (0.5 * tolerance + 2e-16 * Math.abs(best)) / Math.abs(b - a);
    if (smallest > 0.5 || fa === 0) return fa === 0 ? a : best;
    share = Math.min(1 - smallest, Math.max(smallest, nextShare(a, fa, b, fb, c, fc)));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}

/** Share of the bracket at which to look next: by inverse quadratic interpolation if it can be trusted. */
function nextShare(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
  const position = (a - b) / (c - b);
  const height = (fa - fb) / (fc - fb);
  const safe = height * height < position && (1 - height) * (1 - height) < 1 - position;
  if (!safe) return 0.5;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
