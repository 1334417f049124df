/**
 * Solves (matrix + ridge I) step = right for a small symmetric matrix by Cholesky's method.
 *
 * matrix is square, row by row, of the size of right. Returns null if the matrix is not positive definite.
 */
export function solvePositive(matrix: Float64Array, right: Float64Array, ridge: number): Float64Array | null {
  const size = right.length;
  const lower = new Float64Array(size * size);
  const solution = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = (matrix[i * size + j] as number) + (i === j ? ridge : 0);
      for (let k = 0; k < j; k++) sum -= (lower[i * size + k] as number) * (lower[j * size + k] as number);
      if (i === j && !(sum > 1e-14 * ridge + Number.MIN_VALUE)) return null;
      lower[i * size + j] = i === j ? Math.sqrt(sum) : sum / (lower[j * size + j] as number);
    }
  }
  for (let i = 0; i < size; i++) {
    let sum = right[i] as number;
    for (let k = 0; k < i; k++) sum -= (lower[i * size + k] as number) * (solution[k] as number);
    solution[i] = sum / (lower[i * size + i] as number);
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = solution[i] as number;
    for (let k = i + 1; k < size; k++) sum -= (lower[k * size + i] as number) * (solution[k] as number);
    solution[i] = sum / (lower[i * size + i] as number);
  }
  return solution;
}
