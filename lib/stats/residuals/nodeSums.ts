import { absorbRuns, absorbUnits, wearWorkspace } from '../wear/absorb';
import type { WearStatistics } from '../wear/types';
import type { ReadingNodes } from './readingNodes';

/** Numbers a node: A00, A01, A11, b0, b1, f, log determinants. */
export const NODE_SUMS = 7;

/**
 * What some units' readings add, at every node of a posterior, to the sums that its weights and lines follow
 * from: A, b, f and the log determinants of the wear model.
 *
 * All are sums over units, so that those of a fleet without one unit are a difference. Statistics must count
 * y from the posterior's centre, see aboutCentre.
 */
export function nodeSums(posterior: ReadingNodes, statistics: WearStatistics): Float64Array {
  const { weight, startRun, slopeRun, startUnit, slopeUnit } = posterior;
  const sums = new Float64Array(NODE_SUMS * weight.length);
  const workspace = wearWorkspace(statistics);
  for (let node = 0, p = 0; node < weight.length; node++, p += NODE_SUMS) {
    const runs = absorbRuns(workspace, (startRun[node] as number) ** 2, (slopeRun[node] as number) ** 2);
    const units = absorbUnits(workspace, (startUnit[node] as number) ** 2, (slopeUnit[node] as number) ** 2);
    sums.set(workspace.group, p);
    sums[p + 6] = runs + units;
  }
  return sums;
}

/** Sums of two sets of units together (sign 1), or of the first without the second (sign -1). */
export function addSums(one: Float64Array, other: Float64Array, sign: 1 | -1): Float64Array {
  const sums = new Float64Array(one.length);
  for (let k = 0; k < sums.length; k++) sums[k] = (one[k] as number) + sign * (other[k] as number);
  return sums;
}
