import { type Gathering, gatherRatios } from '../wear/gatherRatios';
import type { WearPosterior } from '../wear/types';

/** What of a posterior the foretelling of readings takes: weights, ratios and what all nodes share. */
export type ReadingNodes = Pick<
  WearPosterior,
  'weight' | 'startRun' | 'slopeRun' | 'startUnit' | 'slopeUnit' | 'degreesOfFreedom' | 'table' | 'yCentre'
>;

/** A posterior with fewer nodes costs little as it is. */
const FEW_NODES = 25;
/** Of so many readings no one unit's move the weights far from where the nodes lie. */
const MANY_READINGS = 500;
/** A reading carries the gauge's noise, beside which spreads up to about this share of it differ little. */
const forReadings: Gathering = { small: 0.3, lostSpread: 0.03 };

/**
 * Nodes from which readings are foretold: those of the posterior, or fewer where its many nodes tell apart what the noise of a
 * reading hides, such as spreads of a tenth of it.
 */
export function readingNodes(posterior: WearPosterior): ReadingNodes {
  const { weight, startRun, slopeRun, startUnit, slopeUnit, degreesOfFreedom, table, yCentre } = posterior;
  if (weight.length < FEW_NODES || degreesOfFreedom < MANY_READINGS)
    return { weight, startRun, slopeRun, startUnit, slopeUnit, degreesOfFreedom, table, yCentre };
  const nodeRatios = new Float64Array(4 * weight.length);
  for (const [axis, ratios] of [startRun, slopeRun, startUnit, slopeUnit].entries())
    for (let node = 0; node < weight.length; node++) nodeRatios[4 * node + axis] = ratios[node] as number;
  const gathered = gatherRatios(weight, nodeRatios, forReadings);
  const ratio = (axis: number) =>
    gathered.weights.map((_, cell) => gathered.ratios[4 * cell + axis] as number);
  return {
    weight: gathered.weights,
    startRun: ratio(0),
    slopeRun: ratio(1),
    startUnit: ratio(2),
    slopeUnit: ratio(3),
    degreesOfFreedom,
    table,
    yCentre,
  };
}
