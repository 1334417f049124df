import { learn, levelSquare, lineBelief } from '../../stats/draws/lineBelief';
import { studentCdf, studentQuantile } from '../../stats/wear/studentTable';
import type { LineMixture } from '../../stats/wear/types';

/** A reading must take away this share of the variance of the level at the decision: the doubt is then mostly of the level. */
const leastVarianceShare = 0.5;
/** And it must turn the decision with at least this chance. */
const leastTurnChance = 0.2;

/**
 * Whether one more reading now is worth taking before deciding: it would take away more than half of the variance of the level at
 * the following overhaul, and it would turn the decision with a chance of at least 20 %.
 *
 * The decision turns on whether the level's quantile at 1 - accepted risk lies past the limit. A reading at xNow moves the mean of the
 * level at xDecision by a t-distributed amount whose squared scale is the variance taken away. Limits are mirrored so that they
 * are upper ones by the caller's sign.
 */
export function worthReading(
  mixture: LineMixture,
  limit_mm: number,
  sign: 1 | -1,
  xNow: number,
  xDecision: number,
  acceptedRisk: number,
): boolean {
  const belief = lineBelief(mixture);
  const mean = sign * (belief.start + belief.slope * xDecision);
  const before = levelSquare(belief, xDecision);
  learn(belief, xNow, belief.start + belief.slope * xNow);
  const after = levelSquare(belief, xDecision);
  const taken = before - after;
  if (!(taken > leastVarianceShare * before)) return false;
  const quantile = studentQuantile(mixture.table, 1 - acceptedRisk);
  const limit = sign * limit_mm;
  // The mean after the reading must come to lie on the other side of this.
  const turn = limit - quantile * Math.sqrt(after);
  const below = studentCdf(mixture.table, (turn - mean) / Math.sqrt(taken));
  const pastNow = mean + quantile * Math.sqrt(before) > limit;
  return (pastNow ? below : 1 - below) >= leastTurnChance;
}
