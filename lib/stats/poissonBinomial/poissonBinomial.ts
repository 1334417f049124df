/** One event: its chance, and the whole number of pieces that it takes (1 if not given). */
export interface PieceEvent {
  readonly chance: number;
  readonly pieces?: number;
}

/**
 * Distribution of the pieces that independent events take together: chance of 0, 1, ... pieces, by exact convolution.
 *
 * Every step mixes two nonnegative numbers with weights p and 1 - p, so nothing cancels: relative error about n x 1e-16.
 * Throws if a chance is not within 0 to 1 or pieces are not a whole number of at least 0. Source: the recursion of Barlow and
 * Heidtmann 1984, IEEE Transactions on Reliability 33, 322.
 */
export function poissonBinomial(events: Iterable<PieceEvent>): Float64Array {
  let counts = Float64Array.of(1);
  for (const { chance, pieces = 1 } of events) {
    if (!(chance >= 0 && chance <= 1)) {
      throw new Error(`poissonBinomial requires chances within 0 to 1, got ${chance}`);
    }
    if (!(Number.isInteger(pieces) && pieces >= 0)) {
      throw new Error(`poissonBinomial requires whole numbers of pieces, got ${pieces}`);
    }
    const next = new Float64Array(counts.length + pieces);
    counts.forEach((share, k) => {
      next[k] = (next[k] as number) + share * (1 - chance);
      next[k + pieces] = (next[k + pieces] as number) + share * chance;
    });
    counts = next;
  }
  return counts;
}

/** Chances within this of a level count as reaching it: sums of chances carry rounding. */
const ROUNDING = 1e-14;

/** Smallest count k with P(count <= k) at or above a level, from the chances of 0, 1, ... Throws unless 0 < level < 1. */
export function countQuantile(counts: Float64Array, level: number): number {
  if (!(level > 0 && level < 1))
    throw new Error(`countQuantile requires a level inside 0 to 1, got ${level}`);
  let below = 0;
  const found = counts.findIndex((chance) => {
    below += chance;
    return below >= level - ROUNDING;
  });
  return found < 0 ? counts.length - 1 : found;
}

/** Chance of at least k events. */
export function chanceAtLeast(counts: Float64Array, k: number): number {
  // Summed from the far end, so that small tails keep their digits.
  return counts.subarray(Math.max(0, k)).reduceRight((sum, chance) => sum + chance, 0);
}

/** Expected number of events beyond a stock: sum over k of (k - stock) P(count = k), k > stock. */
export function expectedShortage(counts: Float64Array, stock: number): number {
  return counts.reduceRight((sum, chance, k) => sum + Math.max(0, k - stock) * chance, 0);
}
