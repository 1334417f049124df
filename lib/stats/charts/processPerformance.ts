import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';

/** Process performance index of as-left readings against their assembly range. */
export interface ProcessPerformance {
  readonly ppk: number;
  readonly lower: number;
  readonly upper: number;
  readonly mean: number;
  readonly sd: number;
  readonly readings: number;
  /** The end of the assembly range that is nearer. */
  readonly nearer: 'lower' | 'upper';
}

const FEWEST = 5;

/**
 * Ppk = smaller of (upper - mean) / (3 s) and (mean - lower) / (3 s), s with divisor n - 1, with its two-sided
 * interval Ppk +/- z sqrt(1 / (9 n) + Ppk squared / (2 (n - 1))).
 *
 * The index is that of ISO 22514-2 for normal values; the interval is Bissell's normal approximation, Applied
 * Statistics 39 (1990) 331, equation 7. Level is the probability inside, such as 0.9. Null below 5 readings, where the approximation
 * says nothing, where they do not vary, or where there is no end of the range (null).
 * Throws if a reading is not finite or the level not between 0 and 1.
 */
export function processPerformance(
  values: readonly number[],
  range: { readonly lower: number | null; readonly upper: number | null },
  level = 0.9,
): ProcessPerformance | null {
  if (!(level > 0 && level < 1) || !values.every(Number.isFinite)) {
    throw new Error(`processPerformance requires finite values and a level between 0 and 1, got ${level}`);
  }
  const n = values.length;
  if (n < FEWEST) return null;
  const mean = values.reduce((sum, value) => sum + value, 0) / n;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  if (!(sd > 0)) return null;
  const ends = [
    { nearer: 'upper' as const, index: range.upper === null ? null : (range.upper - mean) / (3 * sd) },
    { nearer: 'lower' as const, index: range.lower === null ? null : (mean - range.lower) / (3 * sd) },
  ].flatMap(({ nearer, index }) => (index === null ? [] : [{ nearer, index }]));
  if (ends.length === 0) return null;
  const { nearer, index: ppk } = ends.reduce((least, end) => (end.index < least.index ? end : least));
  const half = normalQuantile(0.5 + level / 2, 0, 1) * Math.sqrt(1 / (9 * n) + (ppk * ppk) / (2 * (n - 1)));
  return { ppk, lower: ppk - half, upper: ppk + half, mean, sd, readings: n, nearer };
}
