import { type WearWorkspace, wearWorkspace } from './absorb';
import { exactLines } from './exactLines';
import { gatherNodes } from './gatherNodes';
import { mergeNodes, type WeightedNodes } from './mergeNodes';
import { NODE } from './nodeGrid';
import { hasManyUnits, type PlacedNodes, placeNodes, tangentNodes } from './placeNodes';
import { ratioCriterion } from './ratioCriterion';
import { RATIO_NODE } from './ratioNodes';
import { studentTable } from './studentTable';
import type { WearFit, WearPosterior, WearStatistics } from './types';

const TANGENT_COUNT = 13;
/** Weight that the nodes dropped may carry together. */
const DROPPED = 1e-3;
/**
 * Weights this near to each other are the same but for rounding: with one run a unit the data do not tell how run and unit share
 * their spread, and dozens of nodes weigh the same. What is dropped then must not hang on their last digits.
 */
const SAME = 1e-6;

/**
 * Integrates the wear model over its four ratios SD / noise SD instead of plugging in their estimates.
 *
 * Prior half-Cauchy(1) on each ratio (slope ratios per 10,000 h), flat on beta and on s2. Weight of a node =
 * prior x |A|^-1/2 x exp(-log determinants / 2) x RSS^-(N - 4)/2; given the ratios beta and every level are
 * Student t with N - 4 degrees of freedom and s2 = RSS / (N - 4). Placement 'adaptive' (default) puts nodes where
 * the weight is and merges those that hardly differ; 'tangent' puts 13 a ratio over the full range. The lightest
 * nodes, together under 0.1 % of the weight, are dropped. With 2 units the prior leaves a unit not seen without a
 * finite variance: its quantiles mean something, its standard deviation does not. Throws below 7 readings, where N - 4 leaves no finite
 * variance, where all readings lie at one run hour, or where they leave no scatter about lines; noForecastReason
 * says so in words.
 */
export function integrateWear(
  statistics: WearStatistics,
  options: {
    readonly placement?: 'tangent' | 'adaptive';
    /** Ratios of the same statistics' fit: spares looking for the mode where there are many units. */
    readonly fitted?: WearFit['ratios'];
  } = {},
): WearPosterior {
  const { placement = 'adaptive', fitted = null } = options;
  if (statistics.readings < 7) {
    throw new Error(`integrateWear requires at least 7 readings, got ${statistics.readings}`);
  }
  const workspace = wearWorkspace(statistics);
  checkLine(workspace);
  if (placement === 'tangent') {
    const placed = tangentNodes(workspace, TANGENT_COUNT);
    return { ...keepHeaviest(workspace, placed, placed.grid), placement };
  }
  const placed = placeNodes(workspace, fitted);
  const merge = hasManyUnits(workspace) ? gatherNodes : mergeNodes;
  return { ...keepHeaviest(workspace, placed, merge(workspace, placed.grid)), placement };
}

function checkLine(workspace: WearWorkspace): void {
  const criterion = ratioCriterion(workspace, 1);
  criterion.evaluate(false);
  const { inverse00 } = criterion.solution;
  if (!Number.isFinite(inverse00)) throw new Error('integrateWear requires 2 distinct run hours, got 1');
  if (exactLines(workspace.statistics) !== null) {
    const { readings } = workspace.statistics;
    throw new Error(
      `integrateWear requires readings that scatter about lines, got ${readings} exactly on them`,
    );
  }
}

function keepHeaviest(
  workspace: WearWorkspace,
  placed: PlacedNodes,
  { ratios, nodes, weights }: WeightedNodes,
): Omit<WearPosterior, 'placement'> {
  const kept = heaviest(weights);
  const degreesOfFreedom = workspace.statistics.readings - 4;
  const total = kept.reduce((sum, k) => sum + (weights[k] as number), 0);
  const ratio = (index: number) =>
    Float64Array.from(kept, (k) => Math.sqrt(ratios[RATIO_NODE * k + index] as number));
  const field = (index: number) => Float64Array.from(kept, (k) => nodes[NODE * k + index] as number);
  const [startRun, slopeRun] = [ratio(0), ratio(1)];
  const runPair = countPairs(startRun, slopeRun);
  return {
    weight: Float64Array.from(kept, (k) => (weights[k] as number) / total),
    startRun,
    slopeRun,
    startUnit: ratio(2),
    slopeUnit: ratio(3),
    beta0: field(1),
    beta1: field(2),
    inverse00: field(3),
    inverse01: field(4),
    inverse11: field(5),
    s2: field(6).map((residualSquares) => residualSquares / degreesOfFreedom),
    runPair,
    runPairs: 1 + (runPair.at(-1) as number),
    degreesOfFreedom,
    table: studentTable(degreesOfFreedom),
    yCentre: workspace.statistics.yCentre,
    nodesComputed: placed.nodesComputed,
    edgeShare: placed.grid.edgeShare,
  };
}

/** Indices, in order, of the nodes that stay when the lightest are dropped; of nodes that weigh the same all stay or none. */
function heaviest(weights: Float64Array): readonly number[] {
  const sorted = Float64Array.from(weights).sort();
  let sum = 0;
  const first = sorted.findIndex((weight) => {
    sum += weight;
    return sum > DROPPED;
  });
  const least = (sorted[first] as number) * (1 - SAME);
  const indices: number[] = [];
  weights.forEach((weight, k) => {
    if (weight >= least) indices.push(k);
  });
  return indices;
}

/** Numbers the stretches of neighbouring nodes that share both run ratios. */
function countPairs(startRun: Float64Array, slopeRun: Float64Array): Int32Array {
  let pair = 0;
  return Int32Array.from(startRun, (start, k) => {
    if (k > 0 && (start !== startRun[k - 1] || slopeRun[k] !== slopeRun[k - 1])) pair += 1;
    return pair;
  });
}
