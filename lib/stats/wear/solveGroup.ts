import type { WearWorkspace } from './absorb';

/** Generalised least squares of a group at given ratios, in units of the noise variance. */
export interface GroupSolution {
  beta0: number;
  beta1: number;
  inverse00: number;
  inverse01: number;
  inverse11: number;
  /** log |A|. */
  logDeterminant: number;
  /** f - b' beta, mm squared. */
  residualSquares: number;
}

/** Makes a solution to be filled by solveGroup. */
export function groupSolution(): GroupSolution {
  return {
    beta0: 0,
    beta1: 0,
    inverse00: 0,
    inverse01: 0,
    inverse11: 0,
    logDeterminant: 0,
    residualSquares: 0,
  };
}

/**
 * Fills the solution from the sums of absorbUnits: beta = A^-1 b, residual squares = f - b' beta.
 *
 * The residual squares are kept above rounding (1e-15 f), so that a logarithm of them is always finite;
 * noForecastReason names data that come so close to a perfect line.
 */
export function solveGroup({ group }: WearWorkspace, solution: GroupSolution): void {
  const a00 = group[0] as number;
  const a01 = group[1] as number;
  const a11 = group[2] as number;
  const b0 = group[3] as number;
  const b1 = group[4] as number;
  const f = group[5] as number;
  const determinant = a00 * a11 - a01 * a01;
  solution.inverse00 = a11 / determinant;
  solution.inverse01 = -a01 / determinant;
  solution.inverse11 = a00 / determinant;
  solution.beta0 = (a11 * b0 - a01 * b1) / determinant;
  solution.beta1 = (a00 * b1 - a01 * b0) / determinant;
  solution.logDeterminant = Math.log(determinant);
  const residual = f - b0 * solution.beta0 - b1 * solution.beta1;
  solution.residualSquares = Math.max(residual, 1e-15 * f, Number.MIN_VALUE);
}
