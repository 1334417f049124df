import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { chanceToFill, fillChance } from '../wear/mixtureChance';
import type { LineMixture } from '../wear/types';

/** Chances below this are not told apart: |z| ends at about 7. */
const LEAST_CHANCE = 1e-12;

const found = chanceToFill();

/** Where a reading lies in what was foretold for it. */
export interface ReadingScore {
  /** Probability below the reading, from 1e-12 to 1. */
  readonly below: number;
  /** Normal quantile of that probability: standard normal if the model holds; within 7.04 of 0. */
  readonly z: number;
}

/**
 * Scores a reading against the level foretold for its run: z = normal quantile of the probability below it.
 *
 * x is run hours / 10,000, y mm, weight the share of the noise precision that the reading keeps (1 for a plain
 * reading). Each tail is computed from its own side, so that z keeps its digits far out on either.
 */
export function readingScore(line: LineMixture, x: number, y_mm: number, weight = 1): ReadingScore {
  const noisy = weight === 1 ? line : { ...line, s2: line.s2.map((variance) => variance / weight) };
  fillChance(found, noisy, x, y_mm, 1, 1, 0);
  if (found.chance <= 0.5) {
    const chance = Math.max(LEAST_CHANCE, found.chance);
    return { below: chance, z: normalQuantile(chance, 0, 1) };
  }
  const above = Math.max(LEAST_CHANCE, found.otherwise);
  return { below: 1 - above, z: -normalQuantile(above, 0, 1) };
}
