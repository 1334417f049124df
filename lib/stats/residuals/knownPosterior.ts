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
 * @param all sums of all readings at the nodes, see nodeSums
 * @param known sums of the readings known
 * @param table Student's t with N - 4 degrees of freedom, N the number of readings known
 */
export function knownPosterior(
  posterior: WearPosterior,
  all: Float64Array,
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
    logWeight[node] =
      Math.log(posterior.weight[node] as number) +
      logLikelihood(known, p, degreesOfFreedom) -
      logLikelihood(all, p, posterior.degreesOfFreedom);
  }
  return { ...posterior, ...lines, inverse11, s2, weight: normalised(logWeight), degreesOfFreedom, table };
}

/**
 * How much the weights moved: mean over the new weights of new weight / old weight, 1 where nothing moved.
 *
 * Its inverse is the effective share of the nodes. Where it is large the new weight lies where the old nodes are
 * thin or were dropped.
 */
export function weightShift(before: Float64Array, after: Float64Array): number {
  return after.reduce((sum, weight, node) => sum + (weight * weight) / (before[node] as number), 0);
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
  const most = logWeight.reduce((largest, value) => Math.max(largest, value), Number.NEGATIVE_INFINITY);
  const weight = logWeight.map((value) => Math.exp(value - most));
  const sum = weight.reduce((total, value) => total + value, 0);
  return weight.map((value) => value / sum);
}
