import { absorbRuns, absorbUnits, type WearWorkspace } from './absorb';
import { type AngleRange, edgeShare } from './angleRange';
import { RATIO_NODE, ratioNodes } from './ratioNodes';
import { type GroupSolution, groupSolution, solveGroup } from './solveGroup';

/** Numbers a node: log weight, beta0, beta1, A^-1 (00, 01, 11), RSS. */
export const NODE = 7;

/** Every combination of the nodes of four axes, with what the data say at each. */
export interface NodeGrid {
  readonly ranges: readonly AngleRange[];
  /** Squared ratios and log prior, see ratioNodes. */
  readonly ratios: Float64Array;
  readonly nodes: Float64Array;
  /** Weights, summing to 1. */
  readonly weights: Float64Array;
  /** Share of weight at each position of each axis. */
  readonly shares: readonly Float64Array[];
  /** Nodes that were computed; the rest of them carries no weight. */
  readonly computed: number;
  /** Largest share of an outermost node that is not at a natural end of its range. */
  readonly edgeShare: number;
}

/** Evaluates the posterior at every combination of the nodes of four axes. */
export function nodeGrid(workspace: WearWorkspace, ranges: readonly AngleRange[]): NodeGrid {
  const ratios = ratioNodes(ranges);
  return gridOf(ranges, ratios, evaluateNodes(workspace, ratios), ratios.length / RATIO_NODE);
}

/** A grid of nodes of which some were computed; the log weight of the others is minus infinity. */
export function gridOf(
  ranges: readonly AngleRange[],
  ratios: Float64Array,
  nodes: Float64Array,
  computed: number,
): NodeGrid {
  const weights = nodeWeights(nodes);
  const shares = axisShares(ranges, weights);
  const edges = ranges.map((range, axis) => edgeShare(range, shares[axis] as Float64Array));
  return { ranges, ratios, nodes, weights, shares, computed, edgeShare: Math.max(...edges) };
}

/**
 * What the data say at each of a list of nodes (squared ratios and log prior, see ratioNodes).
 *
 * log weight = log prior - 1/2 (log determinants + log |A| + (N - 4) log RSS). The run level is absorbed again
 * only where a run's ratio changes, see absorbRuns: once for each pair of run ratios if the axes are ratios.
 */
export function evaluateNodes(workspace: WearWorkspace, ratios: Float64Array): Float64Array {
  const nodes = new Float64Array((NODE * ratios.length) / RATIO_NODE);
  const solution = groupSolution();
  for (let r = 0, p = 0; r < ratios.length; r += RATIO_NODE, p += NODE) {
    const runs = absorbRuns(workspace, ratios[r] as number, ratios[r + 1] as number);
    const units = absorbUnits(workspace, ratios[r + 2] as number, ratios[r + 3] as number);
    fillNode(workspace, nodes, p, (ratios[r + 4] as number) - 0.5 * (runs + units), solution);
  }
  return nodes;
}

/** Writes one node at place p after its units were absorbed; `known` is its log prior less half the log determinants of run and unit. */
export function fillNode(
  workspace: WearWorkspace,
  nodes: Float64Array,
  p: number,
  known: number,
  solution: GroupSolution,
): void {
  solveGroup(workspace, solution);
  const degrees = workspace.statistics.readings - 4;
  nodes[p] = known - 0.5 * (solution.logDeterminant + degrees * Math.log(solution.residualSquares));
  nodes[p + 1] = solution.beta0;
  nodes[p + 2] = solution.beta1;
  nodes[p + 3] = solution.inverse00;
  nodes[p + 4] = solution.inverse01;
  nodes[p + 5] = solution.inverse11;
  nodes[p + 6] = solution.residualSquares;
}

function nodeWeights(nodes: Float64Array): Float64Array {
  const weights = new Float64Array(nodes.length / NODE);
  let most = Number.NEGATIVE_INFINITY;
  for (let p = 0; p < nodes.length; p += NODE) most = Math.max(most, nodes[p] as number);
  let sum = 0;
  for (let k = 0; k < weights.length; k++) {
    const weight = Math.exp((nodes[NODE * k] as number) - most);
    weights[k] = weight;
    sum += weight;
  }
  for (let k = 0; k < weights.length; k++) weights[k] = (weights[k] as number) / sum;
  return weights;
}

function axisShares(ranges: readonly AngleRange[], weights: Float64Array): readonly Float64Array[] {
  const shares = ranges.map((range) => new Float64Array(range.count));
  weights.forEach((weight, node) => {
    let rest = node;
    for (let axis = 3; axis >= 0; axis--) {
      const share = shares[axis] as Float64Array;
      const position = rest % share.length;
      share[position] = (share[position] as number) + weight;
      rest = (rest - position) / share.length;
    }
  });
  return shares;
}
