import type { WearStatistics } from './types';

/** Scale that makes ratios alike: 1 for starts, root mean square of x for slopes; order as RatioName. */
export function ratioScale({ n, sxx }: WearStatistics): Float64Array {
  const weights = n.reduce((sum, value) => sum + value, 0);
  const squares = sxx.reduce((sum, value) => sum + value, 0);
  const slope = squares > 0 ? Math.sqrt(squares / weights) : 1;
  return Float64Array.of(1, slope, 1, slope);
}
