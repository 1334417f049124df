/** Counts within this of a level reach it: shares of draws carry rounding. */
const ROUNDING = 1e-12;

/** Smallest count that at least the given share of the draws do not exceed. */
export function countQuantileOfDraws(sorted: ArrayLike<number>, level: number): number {
  const index = Math.ceil(level * sorted.length - ROUNDING * sorted.length) - 1;
  return sorted[Math.min(sorted.length - 1, Math.max(0, index))] as number;
}

/** Mean of the draws. */
export function meanOfDraws(counts: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < counts.length; k++) sum += counts[k] as number;
  return sum / counts.length;
}

/** Share of the draws above a count. */
export function shareAbove(counts: ArrayLike<number>, count: number): number {
  let above = 0;
  for (let k = 0; k < counts.length; k++) if ((counts[k] as number) > count + ROUNDING) above += 1;
  return above / counts.length;
}
