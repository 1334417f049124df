import type { StudentTable, WearPosterior } from '../wear/types';
import { NODE_SUMS } from './nodeSums';

/** Rounding leaves residual squares above this share of f. */
const ROUNDING = 1e-15;

/**
 * The posterior that fewer readings would have given, on the nodes of one that knows more.
 *
 * A node's weight is multiplied by the ratio of what it would weigh by the readings known to what it weighs by all:
 * |A|^-1/2 exp(-log determinants / 2) RSS^-(N - 4)/2, RSS = f - b' A^-1 b, for both. Beta, A^-1, s2 = RSS / (N - 4)
 * and the degrees of freedom are those of the readings known.
 *
 * @param before what the nodes weigh but for the readings, see weightBefore
 * @param known sums of the readings known
 * @param table Student's t with N - 4 degrees of freedom, N the number of readings known
 */
export function knownPosterior(
  posterior: WearPosterior,
  before: Float64Array,
  known: Float64Array,
  table: StudentTable,
): WearPosterior {
  const { degreesOfFreedom } = table;
  const size = posterior.weight.length;
  const column = () => new Float64Array(size);
  const lines = { beta0: column(), beta1: column(), inverse00: column(), inverse01: column() };
  const [inverse11, s2, logWeight] = [column(), column(), column()];
  for (let node = 0, p = 0; node < size; node++, p += NODE_SUMS) {
    const a00 = known[p] as number;
    const a01 = known[p + 1] as number;
    const a11 = known[p + 2] as number;
    const b0 = known[p + 3] as number;
    const b1 = known[p + 4] as number;
    const determinant = a00 * a11 - a01 * a01;
    lines.inverse00[node] = a11 / determinant;
    lines.inverse01[node] = -a01 / determinant;
    inverse11[node] = a00 / determinant;
    lines.beta0[node] = (a11 * b0 - a01 * b1) / determinant;
    lines.beta1[node] = (a00 * b1 - a01 * b0) / determinant;
    s2[node] = residualSquares(known, p) / degreesOfFreedom;
    logWeight[node] = (before[node] as number) + logLikelihood(known, p, degreesOfFreedom);
  }
  return { ...posterior, ...lines, inverse11, s2, weight: normalised(logWeight), degreesOfFreedom, table };
}

/**
 * Logarithm of what each node weighs before any reading counts, but for a constant: its weight over the likelihood of the
 * readings that it was made from.
 *
 * @param all sums of all those readings at the nodes, see nodeSums
 */
export function weightBefore({ weight, degreesOfFreedom }: WearPosterior, all: Float64Array): Float64Array {
  return weight.map(
    (share, node) => Math.log(share) - logLikelihood(all, NODE_SUMS * node, degreesOfFreedom),
  );
}

/**
 * How much the weights moved: mean over the new weights of new weight / old weight, 1 where nothing moved.
 *
 * Its inverse is the effective share of the nodes. Where it is large the new weight lies where the old nodes are
 * thin or were dropped.
 */
export function weightShift(before: Float64Array, after: Float64Array): number {
  let sum = 0;
  for (let node = 0; node < after.length; node++)
    sum += (after[node] as number) ** 2 / (before[node] as number);
  return sum;
}

function residualSquares(sums: Float64Array, p: number): number {
  const a00 = sums[p] as number;
  const a01 = sums[p + 1] as number;
  const a11 = sums[p + 2] as number;
  const b0 = sums[p + 3] as number;
  const b1 = sums[p + 4] as number;
  const f = sums[p + 5] as number;
  const explained = (a11 * b0 * b0 - 2 * a01 * b0 * b1 + a00 * b1 * b1) / (a00 * a11 - a01 * a01);
  return Math.max(f - explained, ROUNDING * f, Number.MIN_VALUE);
}

function logLikelihood(sums: Float64Array, p: number, degreesOfFreedom: number): number {
  const determinant =
    (sums[p] as number) * (sums[p + 2] as number) - (sums[p + 1] as number) * (sums[p + 1] as number);
  const squares = degreesOfFreedom * Math.log(residualSquares(sums, p));
  return -0.5 * (Math.log(determinant) + (sums[p + 6] as number) + squares);
}

function normalised(logWeight: Float64Array): Float64Array {
  let most = Number.NEGATIVE_INFINITY;
  for (let node = 0; node < logWeight.length; node++) most = Math.max(most, logWeight[node] as number);
  const weight = new Float64Array(logWeight.length);
  let sum = 0;
  for (let node = 0; node < weight.length; node++) {
    weight[node] = Math.exp((logWeight[node] as number) - most);
    sum += weight[node] as number;
  }
  for (let node = 0; node < weight.length; node++) weight[node] = (weight[node] as number) / sum;
  return weight;
}
