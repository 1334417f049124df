import { absorbRuns, absorbUnits, type WearWorkspace } from './absorb';
import type { AngleRange } from './angleRange';
import { fillNode, gridOf, NODE, type NodeGrid } from './nodeGrid';
import { RATIO_NODE, ratioNodes } from './ratioNodes';
import { groupSolution } from './solveGroup';

/** A node whose log weight lies so far below the highest carries a four-hundredth of its weight: nothing is looked for beyond it. */
const FARTHEST = 6;

/**
 * Evaluates the posterior at the nodes of four axes that carry weight, as nodeGrid does at all, found by going from node to neighbour as long as weight is met: for
 * groups of many units, whose weight lies in one heap that fills a sixth of the grid.
 *
 * What a pair of run ratios absorbs is kept, since the way comes back to it.
 *
 * @param ranges axes that are ratios, not totals and shares
 */
export function nearGrid(workspace: WearWorkspace, ranges: readonly AngleRange[]): NodeGrid {
  const ratios = ratioNodes(ranges);
  const counts = ranges.map(({ count }) => count);
  const strides = counts.map((_, axis) =>
    counts.slice(axis + 1).reduce((product, count) => product * count, 1),
  );
  const absorbed = absorbedPairs(workspace, ratios, strides[1] as number);
  const solution = groupSolution();
  const nodes = new Float64Array((NODE * ratios.length) / RATIO_NODE);
  for (let p = 0; p < nodes.length; p += NODE) nodes[p] = Number.NaN;
  let [computed, highest] = [0, Number.NEGATIVE_INFINITY];
  const look = (node: number) => {
    const r = RATIO_NODE * node;
    const { units, logDeterminants } = absorbed(node);
    const ofUnits = absorbUnits(
      { units, group: workspace.group },
      ratios[r + 2] as number,
      ratios[r + 3] as number,
    );
    fillNode(
      workspace,
      nodes,
      NODE * node,
      (ratios[r + 4] as number) - 0.5 * (logDeterminants + ofUnits),
      solution,
    );
    highest = Math.max(highest, nodes[NODE * node] as number);
    computed++;
    return node;
  };
  const middle = counts.reduce((node, count, axis) => node + (count >> 1) * (strides[axis] as number), 0);
  const ahead = [look(middle)];
  for (let node = ahead.pop(); node !== undefined; node = ahead.pop()) {
    if ((nodes[NODE * node] as number) < highest - FARTHEST) continue;
    for (const [axis, stride] of strides.entries()) {
      const position = Math.floor(node / stride) % (counts[axis] as number);
      if (position > 0 && Number.isNaN(nodes[NODE * (node - stride)])) ahead.push(look(node - stride));
      if (position + 1 < (counts[axis] as number) && Number.isNaN(nodes[NODE * (node + stride)]))
        ahead.push(look(node + stride));
    }
  }
  for (let p = 0; p < nodes.length; p += NODE)
    if (Number.isNaN(nodes[p])) nodes[p] = Number.NEGATIVE_INFINITY;
  return gridOf(ranges, ratios, nodes, computed);
}

/** Sums over units after the run level was absorbed, for the pair of run ratios that a node has; made once a pair. */
function absorbedPairs(workspace: WearWorkspace, ratios: Float64Array, nodesOfPair: number) {
  const pairs: { readonly units: Float64Array; readonly logDeterminants: number }[] = [];
  return (node: number) => {
    const pair = Math.floor(node / nodesOfPair);
    const known = pairs[pair];
    if (known !== undefined) return known;
    const r = RATIO_NODE * node;
    const logDeterminants = absorbRuns(workspace, ratios[r] as number, ratios[r + 1] as number);
    const made = { units: workspace.units.slice(), logDeterminants };
    pairs[pair] = made;
    return made;
  };
}
