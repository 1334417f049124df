import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';

/** How straight the normal probability plot of some values is. */
export interface NormalScores {
  /** Correlation of the values in order with their normal scores. */
  readonly correlation: number;
  /** Chance of a correlation as low or lower from normal values. */
  readonly p: number;
}

const FEWEST = 5;

/**
 * Shapiro and Francia's test: squared correlation W' of the ordered values with the normal scores of
 * (i - 3/8) / (n + 1/4), and its p.
 *
 * log(1 - W') is taken as normal with mean -1.2725 + 1.0521 (log log n - log n) and standard deviation
 * 1.0308 - 0.26758 (log log n + 2 / log n), Royston 1993, Statistics in Medicine 12, 181, stated for 5 to 5,000
 * independent values. Null below 5 values or where all are equal.
 */
export function normalScores(values: ArrayLike<number>): NormalScores | null {
  const n = values.length;
  if (n < FEWEST) return null;
  const sorted = Float64Array.from(values).sort();
  const mean = sorted.reduce((sum, value) => sum + value / n, 0);
  let [xx, xy, yy] = [0, 0, 0];
  sorted.forEach((value, i) => {
    const score = normalQuantile((i + 1 - 3 / 8) / (n + 1 / 4), 0, 1);
    xx += score * score;
    xy += score * (value - mean);
    yy += (value - mean) ** 2;
  });
  if (!(yy > 0) || sorted[0] === sorted[n - 1]) return null;
  const correlation = xy / Math.sqrt(xx * yy);
  const u = Math.log(n);
  const v = Math.log(u);
  const expected = -1.2725 + 1.0521 * (v - u);
  const deviation = 1.0308 - 0.26758 * (v + 2 / u);
  const z = (Math.log(Math.max(1e-15, 1 - correlation * correlation)) - expected) / deviation;
  return { correlation, p: normalCdf(-z, 0, 1) };
}
