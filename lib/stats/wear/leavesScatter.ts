import type { WearStatistics } from './types';

/** Scatter below this share of the readings' own size is rounding of the arithmetic, not of the gauge. */
const ROUNDING = 1e-10;

/** Whether the squared residuals of a group are more than rounding leaves of readings on one exact line. */
export function leavesScatter({ readings, yCentre, syy }: WearStatistics, residualSquares: number): boolean {
  const squares = syy.reduce((sum, value) => sum + value, 0);
  const size = Math.abs(yCentre) + Math.sqrt(squares / readings);
  return residualSquares > readings * (ROUNDING * size) ** 2;
}
