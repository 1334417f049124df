import type { RatioName, WearReading } from '../../../lib/stats/wear/types';

export type Matrix = readonly (readonly number[])[];

/** Generalised least squares with the whole covariance matrix written out; everything in units of s2. */
export interface DenseFit {
  readonly beta: readonly number[];
  /** Inverse of X' V^-1 X. */
  readonly inverse: Matrix;
  readonly residualSquares: number;
  /** log |V| + log |X' V^-1 X|. */
  readonly logDeterminants: number;
  /** P = V^-1 - V^-1 X (X' V^-1 X)^-1 X' V^-1. */
  readonly projection: Matrix;
  readonly vInverse: Matrix;
  /** (P y)[i] / sqrt(P[i][i]). */
  readonly standardised: readonly number[];
}

/** V = noise / weight + start and slope covariances of units and runs, as the model states them. */
export function denseCovariance(
  readings: readonly WearReading[],
  ratios: Readonly<Record<RatioName, number>>,
): Matrix {
  return readings.map((one, i) =>
    readings.map((other, j) => {
      const unit = one.unit === other.unit;
      const run = unit && one.run === other.run;
      const xx = one.x * other.x;
      return (
        (i === j ? 1 / (one.weight ?? 1) : 0) +
        (unit ? ratios.startUnit ** 2 + ratios.slopeUnit ** 2 * xx : 0) +
        (run ? ratios.startRun ** 2 + ratios.slopeRun ** 2 * xx : 0)
      );
    }),
  );
}

/** Fits y on the columns of design with covariance matrix v. */
export function denseFit(v: Matrix, design: Matrix, y: readonly number[]): DenseFit {
  const vInverse = inverted(v);
  const weighted = product(vInverse, design);
  const information = product(transposed(design), weighted);
  const inverse = inverted(information);
  const correction = product(product(weighted, inverse), transposed(weighted));
  const p = vInverse.map((row, i) => row.map((value, j) => value - cell(correction, i, j)));
  const py = p.map((row) => dot(row, y));
  return {
    beta: product(product(inverse, transposed(weighted)), transposed([y])).map((row) => row[0] as number),
    inverse,
    residualSquares: dot(py, y),
    logDeterminants: logDeterminant(v) + logDeterminant(information),
    projection: p,
    vInverse,
    standardised: py.map((value, i) => value / Math.sqrt(cell(p, i, i))),
  };
}

/** Number of independent columns and residual squares of y on them, by orthogonalising one after the other. */
export function leastSquares(columns: Matrix, y: readonly number[]): { rank: number; squares: number } {
  const basis: number[][] = [];
  const reduce = (column: readonly number[]) => {
    let rest = [...column];
    // Twice, because once leaves rounding behind.
    for (const unit of [...basis, ...basis]) {
      const share = dot(unit, rest);
      rest = rest.map((value, k) => value - share * (unit[k] as number));
    }
    return rest;
  };
  for (const column of columns) {
    const rest = reduce(column);
    const size = Math.sqrt(dot(rest, rest));
    if (size > 1e-9 * Math.sqrt(dot(column, column))) basis.push(rest.map((value) => value / size));
  }
  const rest = reduce(y);
  return { rank: basis.length, squares: dot(rest, rest) };
}

function inverted(matrix: Matrix): Matrix {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let k = 0; k < n; k++) {
    const pivot = rows
      .slice(k)
      .reduce((best, row) => (Math.abs(row[k] ?? 0) > Math.abs(best[k] ?? 0) ? row : best));
    rows.splice(rows.indexOf(pivot), 1);
    rows.splice(k, 0, pivot);
    const scaled = pivot.map((value) => value / (pivot[k] as number));
    for (let i = 0; i < n; i++) {
      const factor = cell(rows, i, k);
      rows[i] = i === k ? scaled : cells(rows, i).map((value, j) => value - factor * (scaled[j] as number));
    }
  }
  return rows.map((row) => row.slice(n));
}

/** Of a positive definite matrix, by elimination down the diagonal. */
function logDeterminant(matrix: Matrix): number {
  const rows = matrix.map((row) => [...row]);
  return rows.reduce((sum, pivot, k) => {
    for (let i = k + 1; i < rows.length; i++) {
      const factor = cell(rows, i, k) / (pivot[k] as number);
      rows[i] = cells(rows, i).map((value, j) => value - factor * (pivot[j] as number));
    }
    return sum + Math.log(cell(rows, k, k));
  }, 0);
}

export function product(one: Matrix, other: Matrix): Matrix {
  const columns = transposed(other);
  return one.map((row) => columns.map((column) => dot(row, column)));
}

export function transposed(matrix: Matrix): Matrix {
  return cells(matrix, 0).map((_, j) => matrix.map((row) => row[j] as number));
}

export function dot(one: readonly number[], other: readonly number[]): number {
  return one.reduce((sum, value, k) => sum + value * (other[k] as number), 0);
}

function cells(matrix: Matrix, i: number): readonly number[] {
  return matrix[i] as readonly number[];
}

function cell(matrix: Matrix, i: number, j: number): number {
  return cells(matrix, i)[j] as number;
}
