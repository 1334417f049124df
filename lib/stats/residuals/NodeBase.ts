import { RUN } from '../wear/absorb';
import type { WearStatistics } from '../wear/types';
import { NODE_SUMS, nodeSums } from './nodeSums';
import type { ReadingNodes } from './readingNodes';

/** Numbers a node: W00, W01, W11, q0, q1, qq of a unit's runs, product of their determinants, logarithm of what was taken out of it. */
export const UNIT_SUMS = 8;
/** A product of determinants is turned into a logarithm before it can overflow, or underflow the square root that it ends in. */
const LARGE = 1e100;
/** Rounding leaves residual squares above this share of f. */
const ROUNDING = 1e-15;

/** A posterior with the sums of the readings that it was made from, at its nodes, and what these weigh without them. */
export interface NodeBase {
  readonly posterior: ReadingNodes;
  /** Squared ratios of every node: start run, slope run, start unit, slope unit. */
  readonly squared: Float64Array;
  /** Sums of all readings, see nodeSums. */
  readonly all: Float64Array;
  /** Logarithm of what a node weighs before any reading counts, but for a constant. */
  readonly before: Float64Array;
}

/** Makes the base of a posterior and the statistics that it was made from, which count y from its centre. */
export function nodeBase(posterior: ReadingNodes, statistics: WearStatistics): NodeBase {
  const { weight, startRun, slopeRun, startUnit, slopeUnit, degreesOfFreedom } = posterior;
  const squared = new Float64Array(4 * weight.length);
  for (let node = 0; node < weight.length; node++) {
    squared[4 * node] = (startRun[node] as number) ** 2;
    squared[4 * node + 1] = (slopeRun[node] as number) ** 2;
    squared[4 * node + 2] = (startUnit[node] as number) ** 2;
    squared[4 * node + 3] = (slopeUnit[node] as number) ** 2;
  }
  const all = nodeSums(posterior, statistics);
  const before = weight.map((share, node) => Math.log(share) - logLikelihood(all, node, degreesOfFreedom));
  return { posterior, squared, all, before };
}

/** Likelihood of the readings behind the sums: |A|^-1/2 exp(-log determinants / 2) RSS^-(N - 4)/2. */
function logLikelihood(sums: Float64Array, node: number, degreesOfFreedom: number): number {
  const [a00, a01, a11, b0, b1, f, logDeterminants] = sums.subarray(NODE_SUMS * node) as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const determinant = a00 * a11 - a01 * a01;
  const squares = residualSquares(f, (a11 * b0 * b0 - 2 * a01 * b0 * b1 + a00 * b1 * b1) / determinant);
  return -0.5 * (Math.log(determinant) + logDeterminants + degreesOfFreedom * Math.log(squares));
}

/** RSS = f - b' A^-1 b, kept above rounding. */
export function residualSquares(f: number, explained: number): number {
  return Math.max(f - explained, ROUNDING * f, Number.MIN_VALUE);
}

/** Adds one run, written at p as fillRun does, to the sums of a unit at every node: into = from with the run absorbed. */
export function addRun(
  { squared }: NodeBase,
  from: Float64Array,
  runs: Float64Array,
  p: number,
  into: Float64Array,
): void {
  const n = runs[p] as number;
  const sx = runs[p + 1] as number;
  const sxx = runs[p + 2] as number;
  const sy = runs[p + 3] as number;
  const sxy = runs[p + 4] as number;
  const d = runs[p + 5] as number;
  const syy = runs[p + 6] as number;
  const gramY = runs[p + 7] as number;
  const gramXY = runs[p + 8] as number;
  const gram = runs[p + 9] as number;
  const bySlope = sxx * sy - sx * sxy;
  const byStart = n * sxy - sx * sy;
  for (let k = 0, o = 0; o < into.length; k += 4, o += UNIT_SUMS) {
    const a2 = squared[k] as number;
    const v2 = squared[k + 1] as number;
    const determinant = 1 + n * a2 + sxx * v2 + d * a2 * v2;
    const inverse = 1 / determinant;
    into[o] = (from[o] as number) + (n + d * v2) * inverse;
    into[o + 1] = (from[o + 1] as number) + sx * inverse;
    into[o + 2] = (from[o + 2] as number) + (sxx + d * a2) * inverse;
    into[o + 3] = (from[o + 3] as number) + (sy + v2 * bySlope) * inverse;
    into[o + 4] = (from[o + 4] as number) + (sxy + a2 * byStart) * inverse;
    into[o + 5] = (from[o + 5] as number) + (syy + a2 * gramY + v2 * gramXY + a2 * v2 * gram) * inverse;
    const product = (from[o + 6] as number) * determinant;
    const isLarge = product > LARGE;
    into[o + 6] = isLarge ? 1 : product;
    into[o + 7] = (from[o + 7] as number) + (isLarge ? Math.log(product) : 0);
  }
}

/** Sums of a unit without runs. */
export function clearUnit(sums: Float64Array): void {
  sums.fill(0);
  for (let o = 6; o < sums.length; o += UNIT_SUMS) sums[o] = 1;
}

/** Sums of a unit's runs, written one after another, those without readings left out. */
export function addRuns(
  base: NodeBase,
  runs: Float64Array,
  from: number,
  to: number,
  into: Float64Array,
): void {
  clearUnit(into);
  for (let p = RUN * from; p < RUN * to; p += RUN)
    if ((runs[p] as number) > 0) addRun(base, into, runs, p, into);
}
