import type { WearWorkspace } from './absorb';
import { type Gathering, gatherRatios } from './gatherRatios';
import type { WeightedNodes } from './mergeNodes';
import { evaluateNodes, type NodeGrid } from './nodeGrid';
import { RATIO_NODE } from './ratioNodes';

/** What forecasts of levels hardly tell apart. */
export const forLevels: Gathering = { small: 0.2, lostSpread: 0.014 };

/**
 * Puts the nodes of a grid into few cells, where the data are evaluated again: for groups of many units, which are asked for a
 * forecast of each.
 */
export function gatherNodes(workspace: WearWorkspace, grid: NodeGrid): WeightedNodes {
  const nodeRatios = new Float64Array(4 * grid.weights.length);
  for (let node = 0; node < grid.weights.length; node++)
    for (let axis = 0; axis < 4; axis++)
      nodeRatios[4 * node + axis] = Math.sqrt(grid.ratios[RATIO_NODE * node + axis] as number);
  const gathered = gatherRatios(grid.weights, nodeRatios, forLevels);
  const { weights } = gathered;
  const ratios = new Float64Array(RATIO_NODE * weights.length);
  for (let cell = 0; cell < weights.length; cell++)
    for (let axis = 0; axis < 4; axis++)
      ratios[RATIO_NODE * cell + axis] = (gathered.ratios[4 * cell + axis] as number) ** 2;
  return { ratios, weights, nodes: evaluateNodes(workspace, ratios) };
}
