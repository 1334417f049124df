import type { WearWorkspace } from './absorb';
import type { WeightedNodes } from './mergeNodes';
import { mergedRatio, mergeScale } from './mergeScale';
import { evaluateNodes, type NodeGrid } from './nodeGrid';
import { RATIO_NODE } from './ratioNodes';

/** Spread of the ratios that may be lost inside the cells: variance on the merging scale, summed over the four. */
export const LOST_SPREAD = 0.014;

interface Cell {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  readonly mean: Float64Array;
  /** Weight x variance along each axis. */
  readonly spread: Float64Array;
}

/**
 * Puts the nodes of a grid into few cells, each of which becomes one node at its weighted mean position on the merging scale, where
 * the data are evaluated again: for groups of many units, which are asked for a forecast of each.
 *
 * The cell that loses most is cut in two at its mean, across the axis on which its nodes are spread most, until what all of them
 * lose together is small (Wan, Prusinkiewicz, Wong 1990, Color Research and Application 15, 52). Light nodes far out
 * share a cell where heavy ones near the mode have several. A chance is moved by 0.0003 on average and 0.0024 at most (20 groups of 100
 * units against all nodes); the cells of equal width of mergeNodes, four times as many, move it by 0.0002 and 0.003.
 */
export function gatherNodes(workspace: WearWorkspace, grid: NodeGrid): WeightedNodes {
  const nodes = Int32Array.from(grid.weights.keys());
  const positions = new Float64Array(4 * nodes.length);
  for (const node of nodes)
    for (let axis = 0; axis < 4; axis++)
      positions[4 * node + axis] = mergeScale(Math.sqrt(grid.ratios[RATIO_NODE * node + axis] as number));
  const cells = [cellOf(grid.weights, positions, nodes, 0, nodes.length)];
  for (;;) {
    const lost = cells.map(({ spread }) => spread.reduce((sum, axis) => sum + axis, 0));
    if (lost.reduce((sum, one) => sum + one, 0) <= LOST_SPREAD) break;
    const most = lost.indexOf(Math.max(...lost));
    const { from, to, mean, spread } = cells[most] as Cell;
    const axis = spread.indexOf(Math.max(...spread));
    const middle = cut(nodes, positions, axis, mean[axis] as number, from, to);
    cells[most] = cellOf(grid.weights, positions, nodes, from, middle);
    cells.push(cellOf(grid.weights, positions, nodes, middle, to));
  }
  const ratios = new Float64Array(RATIO_NODE * cells.length);
  for (const [cell, { mean }] of cells.entries())
    for (let axis = 0; axis < 4; axis++)
      ratios[RATIO_NODE * cell + axis] = mergedRatio(mean[axis] as number) ** 2;
  return {
    ratios,
    weights: Float64Array.from(cells, ({ weight }) => weight),
    nodes: evaluateNodes(workspace, ratios),
  };
}

function cellOf(
  weights: Float64Array,
  positions: Float64Array,
  nodes: Int32Array,
  from: number,
  to: number,
): Cell {
  const mean = new Float64Array(4);
  const spread = new Float64Array(4);
  let weight = 0;
  for (let k = from; k < to; k++) {
    const node = nodes[k] as number;
    const share = weights[node] as number;
    weight += share;
    for (let axis = 0; axis < 4; axis++)
      mean[axis] = (mean[axis] as number) + share * (positions[4 * node + axis] as number);
  }
  for (let axis = 0; axis < 4; axis++) mean[axis] = (mean[axis] as number) / weight;
  for (let k = from; k < to; k++) {
    const node = nodes[k] as number;
    for (let axis = 0; axis < 4; axis++) {
      const off = (positions[4 * node + axis] as number) - (mean[axis] as number);
      spread[axis] = (spread[axis] as number) + (weights[node] as number) * off * off;
    }
  }
  return { from, to, weight, mean, spread };
}

/** Puts the nodes of a cell below a position on an axis before those above it; where the latter begin. */
function cut(
  nodes: Int32Array,
  positions: Float64Array,
  axis: number,
  at: number,
  from: number,
  to: number,
): number {
  const cell = nodes.slice(from, to);
  const isBelow = (node: number) => (positions[4 * node + axis] as number) < at;
  const below = cell.filter(isBelow);
  nodes.set(below, from);
  nodes.set(
    cell.filter((node) => !isBelow(node)),
    from + below.length,
  );
  return from + below.length;
}
