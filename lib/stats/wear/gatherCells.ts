/** Nodes put into few cells: what each weighs, and its weighted mean position on four axes, one after another. */
export interface GatheredCells {
  readonly weights: Float64Array;
  readonly means: Float64Array;
}

interface Cell {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  readonly mean: Float64Array;
  /** Weight x variance along each axis. */
  readonly spread: Float64Array;
}

/**
 * Puts weighted nodes in four dimensions into as few cells as lose no more than a given spread inside them.
 *
 * The cell that loses most is cut in two at its mean, across the axis on which its nodes are spread most, until what all of them
 * lose together is small enough (Wan, Prusinkiewicz, Wong 1990, Color Research and Application 15, 52). Light nodes far out
 * share a cell where heavy ones near the mode have several.
 *
 * @param weights of the nodes, summing to 1
 * @param positions four numbers a node
 * @param lostSpread variance that may be lost, summed over the four axes
 */
export function gatherCells(
  weights: Float64Array,
  positions: Float64Array,
  lostSpread: number,
): GatheredCells {
  const nodes = Int32Array.from(weights.keys());
  const cells = [cellOf(weights, positions, nodes, 0, nodes.length)];
  for (;;) {
    const lost = cells.map(({ spread }) => spread.reduce((sum, axis) => sum + axis, 0));
    if (lost.reduce((sum, one) => sum + one, 0) <= lostSpread) break;
    const most = lost.indexOf(Math.max(...lost));
    const { from, to, mean, spread } = cells[most] as Cell;
    const axis = spread.indexOf(Math.max(...spread));
    const middle = cut(nodes, positions, axis, mean[axis] as number, from, to);
    cells[most] = cellOf(weights, positions, nodes, from, middle);
    cells.push(cellOf(weights, positions, nodes, middle, to));
  }
  const means = new Float64Array(4 * cells.length);
  for (const [cell, { mean }] of cells.entries()) means.set(mean, 4 * cell);
  return { weights: Float64Array.from(cells, ({ weight }) => weight), means };
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
