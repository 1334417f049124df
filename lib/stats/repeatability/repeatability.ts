import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import studentCdf from '@stdlib/stats-base-dists-t-cdf';

/** Gauge repeatability from pairs of readings of the same state. */
export interface Repeatability {
  /** Standard deviation of one reading, mm. */
  readonly sd_mm: number;
  readonly lower_mm: number;
  readonly upper_mm: number;
  readonly pairs: number;
  /** Mean of second less first reading, mm. */
  readonly meanDifference_mm: number;
  /** Chance of a mean difference as large either way if there were none (paired t); null with under 2 pairs or where all differences are the same. */
  readonly meanDifferenceP: number | null;
  /** Whether the mean difference was found other than zero at 5 %: the sd then holds it as well as the noise. */
  readonly shifted: boolean;
}

const SHIFTED = 0.05;

/**
 * Repeatability s = sqrt(sum of d squared / (2 n)) of n differences d between two readings of one state.
 *
 * Its interval is s sqrt(n / chi-square quantile) with n degrees of freedom, at the level inside, such as 0.9. The
 * mean difference is tested first by the paired t test. Null without pairs and where all differences are zero:
 * then the reading's resolution, not the noise, is what was seen. Throws if a difference is not finite or the
 * level not between 0 and 1. Bland and Altman 1996, British Medical Journal 313, 744 (within-subject sd).
 */
export function repeatability(differences_mm: readonly number[], level = 0.9): Repeatability | null {
  if (!(level > 0 && level < 1) || !differences_mm.every(Number.isFinite)) {
    throw new Error(`repeatability requires finite differences and a level between 0 and 1, got ${level}`);
  }
  const pairs = differences_mm.length;
  const sumSquares = differences_mm.reduce((sum, d) => sum + d * d, 0);
  if (!(sumSquares > 0)) return null;
  const sd_mm = Math.sqrt(sumSquares / (2 * pairs));
  const bound = (below: number) => sd_mm * Math.sqrt(pairs / chiSquareQuantile(below, pairs));
  const meanDifference_mm = differences_mm.reduce((sum, d) => sum + d, 0) / pairs;
  const meanDifferenceP = pairedP(differences_mm, meanDifference_mm);
  return {
    sd_mm,
    lower_mm: bound(0.5 + level / 2),
    upper_mm: bound(0.5 - level / 2),
    pairs,
    meanDifference_mm,
    meanDifferenceP,
    shifted: meanDifferenceP !== null && meanDifferenceP < SHIFTED,
  };
}

/** One workshop's differences, mm. */
export interface WorkshopPairs {
  readonly workshop: string;
  readonly differences_mm: readonly number[];
}

/** Repeatability by workshop and of all pairs together. */
export interface PooledRepeatability {
  readonly workshops: readonly {
    readonly workshop: string;
    readonly result: Repeatability | null;
  }[];
  readonly pooled: Repeatability | null;
}

/**
 * Repeatability of each workshop and of all together: pooled s squared = all squares / (2 x all pairs), which is
 * the mean of the workshops' s squared weighted by their pairs.
 */
export function pooledRepeatability(given: readonly WorkshopPairs[], level = 0.9): PooledRepeatability {
  return {
    workshops: given.map(({ workshop, differences_mm }) => ({
      workshop,
      result: repeatability(differences_mm, level),
    })),
    pooled: repeatability(
      given.flatMap(({ differences_mm }) => differences_mm),
      level,
    ),
  };
}

function pairedP(differences: readonly number[], mean: number): number | null {
  const n = differences.length;
  if (n < 2) return null;
  const variance = differences.reduce((sum, d) => sum + (d - mean) ** 2, 0) / (n - 1);
  // Rounding must not make a variance of differences that are all the same.
  if (!(variance > 1e-24 * mean * mean)) return null;
  return 2 * studentCdf(-Math.abs(mean) / Math.sqrt(variance / n), n - 1);
}
