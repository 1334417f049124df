import type { WearWorkspace } from './absorb';
import { type AngleRange, type Fineness, fitRange, RIGHT_ANGLE } from './angleRange';
import { MERGED_WIDTH, mergeScale } from './mergeScale';
import { modeRanges } from './modeRanges';
import { nearGrid } from './nearGrid';
import { type NodeGrid, nodeGrid } from './nodeGrid';
import type { WearFit } from './types';

/** Groups with no more runs start from the full range, so that a second mode cannot be missed. */
const SMALL_GROUP = 100;
/** Few units leave heavy tails, which want finer cells. */
const FEW_UNITS = 8;
const FINE_CELL = 0.8;
/** Widest cell in standard deviations: the midpoint rule's error for a normal density is then 2 exp(-15). */
const CELL = 1.15;
const MOST_AT_EDGE = 1e-3;
/** In groups with more runs the weight falls off like a normal density: beyond an edge with this share lies a tenth of it. */
const LARGE_GROUP = 1000;
const LARGE_EDGE = 4e-3;
/** Error of the midpoint rule there: 2 exp(-11). */
const LARGE_CELL = 1.3;
/** With fewer runs a unit the spreads of run and unit are hardly told apart: their total and shares are used. */
const RUNS_PER_UNIT = 1.5;
const SEARCH_COUNT = 7;
/** With so many units every ratio is known so well that the first nodes, laid by the curvature at the mode, mostly serve. */
const MANY_UNITS = 50;
/** Error of the midpoint rule there: 2 exp(-6). */
const MANY_CELL = 1.8;
/** Nodes of an axis to begin with there, where little more than a normal density is to be summed. */
const MANY_COUNT = 5;
/** Ratios known so well lose little by what lies beyond such an edge. */
const MANY_EDGE = 1e-2;
const ROUNDS = 12;

/** Nodes and how many were computed to find them. */
export interface PlacedNodes {
  readonly grid: NodeGrid;
  readonly nodesComputed: number;
}

/** Nodes at a fixed number of equally spaced angles over the full range of every ratio: the tangent grid. */
export function tangentNodes(workspace: WearWorkspace, count: number): PlacedNodes {
  const range: AngleRange = { kind: 'ratio', scale: 1, low: 0, high: RIGHT_ANGLE, count };
  return { grid: nodeGrid(workspace, [range, range, range, range]), nodesComputed: count ** 4 };
}

/**
 * Places nodes where the posterior is: ranges of the four angles are widened while an outermost node carries
 * over 0.1 % of the weight, cut where cells carry none, and divided by the spread of the weight. Once the cells
 * are fine enough to show the weight, the final nodes are laid by what they show.
 *
 * Angles atan(ratio / scale) rather than ratios, because the weight is even in the angle at both ends of its
 * range, where the midpoint rule therefore stays exact.
 *
 * @param fitted ratios of the group's fit, near which the mode of the weight lies where there are many units
 */
export function placeNodes(workspace: WearWorkspace, fitted: WearFit['ratios'] | null = null): PlacedNodes {
  const runs = workspace.statistics.runNames.length;
  const units = workspace.statistics.unitNames.length;
  const small = runs <= SMALL_GROUP;
  const inTotals = runs < RUNS_PER_UNIT * units;
  const many = hasManyUnits(workspace);
  const large = runs > LARGE_GROUP && units >= FEW_UNITS;
  const mostAtEdge = many ? MANY_EDGE : large ? LARGE_EDGE : MOST_AT_EDGE;
  const widestCell = units < FEW_UNITS ? FINE_CELL : many ? MANY_CELL : large ? LARGE_CELL : CELL;
  const search = { mostAtEdge, widestCell, resolved: false };
  const near =
    many && fitted !== null ? [fitted.startRun, fitted.slopeRun, fitted.startUnit, fitted.slopeUnit] : null;
  const nearMode = modeRanges(workspace, many ? MANY_COUNT : SEARCH_COUNT, inTotals, near);
  if (!small && nearMode.every(isNarrow)) return narrowNodes(workspace, nearMode);
  let ranges = small ? nearMode.map((range) => ({ ...range, low: 0, high: RIGHT_ANGLE })) : nearMode;
  let nodesComputed = 0;
  let resolved = false;
  for (let round = 1; ; round++) {
    const grid = many ? nearGrid(workspace, ranges) : nodeGrid(workspace, ranges);
    nodesComputed += grid.computed;
    const fitTo = (fineness: Fineness) =>
      ranges.map((range, axis) => fitRange(range, grid.shares[axis] as Float64Array, fineness));
    const inside = grid.edgeShare <= mostAtEdge;
    if ((resolved && inside) || round === ROUNDS) return { grid, nodesComputed };
    const fitted = fitTo(search);
    resolved ||= inside && fitted.every((range, axis) => isFineEnough(ranges[axis] as AngleRange, range));
    if (many && resolved) return { grid, nodesComputed };
    ranges = resolved ? fitTo({ ...search, resolved }) : fitted;
  }
}

/** Whether the group has many units, and runs enough to tell their spread from that of its runs. */
export function hasManyUnits({ statistics: { unitNames, runNames } }: WearWorkspace): boolean {
  return unitNames.length >= MANY_UNITS && runNames.length >= RUNS_PER_UNIT * unitNames.length;
}

/** Whether a range is so narrow that all its nodes would be merged into one. */
function isNarrow(range: AngleRange): boolean {
  if (range.kind === 'share') return true;
  const [low, high] = [range.low, range.high].map((angle) => range.scale * Math.tan(angle));
  return mergeScale(high as number) - mergeScale(low as number) < MERGED_WIDTH;
}

/** Three nodes over 8 standard deviations, where ratios are known so well that forecasts take one node. */
function narrowNodes(workspace: WearWorkspace, ranges: readonly AngleRange[]): PlacedNodes {
  const grid = nodeGrid(
    workspace,
    ranges.map((range) => (range.kind === 'share' ? range : { ...range, count: 3 })),
  );
  return { grid, nodesComputed: grid.weights.length };
}

function isFineEnough(used: AngleRange, fitted: AngleRange): boolean {
  const usedCell = (used.high - used.low) / used.count;
  const fittedCell = (fitted.high - fitted.low) / fitted.count;
  return fitted.scale === used.scale && usedCell <= fittedCell * 1.001;
}
