import { median } from 'd3-array';

/** A straight line that one wild reading cannot turn. */
export interface TheilSenLine {
  readonly slope: number;
  /** Fitted y at x = 0. */
  readonly intercept: number;
}

/**
 * Theil-Sen line: slope = median of (y[j] - y[i]) / (x[j] - x[i]) over all pairs with different x, intercept =
 * median of y - slope x.
 *
 * x in run hours / 10,000 and y in mm, or any other units. Null at fewer than 2 distinct x, or where a result
 * leaves the range of numbers. Throws if x and y differ in length.
 * Sen 1968, Journal of the American Statistical Association 63, 1379; the intercept as in Hollander and Wolfe,
 * Nonparametric Statistical Methods, section 9.3.
 */
export function theilSen(x: ArrayLike<number>, y: ArrayLike<number>): TheilSenLine | null {
  if (x.length !== y.length)
    throw new Error(`theilSen requires as many x as y, got ${x.length} and ${y.length}`);
  const slopes: number[] = [];
  for (let j = 1; j < x.length; j++) {
    for (let i = 0; i < j; i++) {
      if (x[i] === x[j]) continue;
      slopes.push(((y[j] as number) - (y[i] as number)) / ((x[j] as number) - (x[i] as number)));
    }
  }
  if (!slopes.every(Number.isFinite)) return null;
  const slope = median(slopes) ?? Number.NaN;
  const intercept = median(Array.from(y, (value, k) => value - slope * (x[k] as number))) ?? Number.NaN;
  return Number.isFinite(slope) && Number.isFinite(intercept) ? { slope, intercept } : null;
}
