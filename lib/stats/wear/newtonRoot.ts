const MOST_STEPS = 100;

/**
 * Root of a function between two points where it has opposite signs, by Newton's method from a guess: two or three looks where the
 * guess is good. A step that leaves the bracket, or that does not halve the value, is a bisection instead.
 *
 * Stops when a step, which is far longer than the error after it, or the bracket is within the tolerance.
 *
 * @param valueAt the function, looked at once a step
 * @param slope its derivative where it was looked at last
 * @param rises whether it is negative at low and positive at high, or the other way round
 */
export function newtonRoot(
  valueAt: (x: number) => number,
  slope: () => number,
  guess: number,
  low: number,
  high: number,
  rises: boolean,
  tolerance: number,
): number {
  let [least, greatest, before] = [low, high, Number.POSITIVE_INFINITY];
  let x = guess > low && guess < high ? guess : (low + high) / 2;
  for (let step = 0; step < MOST_STEPS; step++) {
    const value = valueAt(x);
    if (value === 0) return x;
    if (value > 0 === rises) greatest = x;
    else least = x;
    const size = Math.abs(value);
    const newton = x - value / slope();
    const next =
      newton >= least && newton <= greatest && size <= before / 2 ? newton : (least + greatest) / 2;
    if (Math.abs(next - x) <= tolerance || greatest - least <= tolerance) return next;
    before = size;
    x = next;
  }
  return x;
}
