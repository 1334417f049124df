import { RUN } from '../wear/absorb';
import type { LineMixture, StudentTable } from '../wear/types';
import { type NodeBase, residualSquares, UNIT_SUMS } from './NodeBase';
import { NODE_SUMS } from './nodeSums';

/** A level at one x as a mixture over the nodes, with what it takes to make the next one in its place. */
export interface LevelAtNodes {
  /** Lines without a slope, so that they can be read at any x; the table is that of the level asked for last. */
  readonly line: Omit<LineMixture, 'table'> & { table: StudentTable };
  /** Product of the determinants of every node. */
  readonly products: Float64Array;
  /**
   * Mean over the new weights of new weight / the base's, 1 where nothing moved: its inverse is the effective share of the nodes.
   * Where it is large the weight lies where the base's nodes are thin or were dropped.
   */
  shift: number;
}

/** Makes a level to be filled. */
export function levelOver({ posterior: { weight, table } }: NodeBase): LevelAtNodes {
  const column = () => new Float64Array(weight.length);
  const flat = column();
  const line = {
    weight: column(),
    start: column(),
    slope: flat,
    startStart: column(),
    startSlope: flat,
    slopeSlope: flat,
    s2: column(),
    table,
  };
  return { line, products: column(), shift: 1 };
}

/**
 * Fills the level of a run at x (run hours / 10,000) given the readings of all other units and those known of its own.
 *
 * A node's weight is what it weighs before any reading x |A|^-1/2 exp(-log determinants / 2) RSS^-(N - 4)/2, RSS = f - b' A^-1 b,
 * for the N readings known. With e = (1, x) (I + D S)^-1 of the run and k = e (I + D W)^-1 of the unit: mean = e D r + k (beta + D q),
 * squared scale / s2 = e D (1, x)' + k D e' + k A^-1 k', s2 = RSS / (N - 4); the same as runLevel at x.
 *
 * @param others sums of the other units, see nodeSums
 * @param known sums of the unit's known runs, see addRun
 * @param runs the unit's runs as fillRun writes them
 * @param table Student's t with N - 4 degrees of freedom
 */
export function fillLevel(
  { line, products }: LevelAtNodes,
  { squared, before, posterior }: NodeBase,
  others: Float64Array,
  known: Float64Array,
  runs: Float64Array,
  run: number,
  x: number,
  table: StudentTable,
): void {
  const { weight: logWeight, start, startStart, s2 } = line;
  const degrees = table.degreesOfFreedom;
  line.table = table;
  const perDegree = 1 / degrees;
  const p = RUN * run;
  const n = runs[p] as number;
  const sx = runs[p + 1] as number;
  const sxx = runs[p + 2] as number;
  const sy = runs[p + 3] as number;
  const sxy = runs[p + 4] as number;
  const d = runs[p + 5] as number;
  for (let node = 0, k = 0, o = 0, q = 0; node < s2.length; node++, k += 4, o += UNIT_SUMS, q += NODE_SUMS) {
    const a2 = squared[k] as number;
    const v2 = squared[k + 1] as number;
    const w2 = squared[k + 2] as number;
    const u2 = squared[k + 3] as number;
    const w00 = known[o] as number;
    const w01 = known[o + 1] as number;
    const w11 = known[o + 2] as number;
    const q0 = known[o + 3] as number;
    const q1 = known[o + 4] as number;
    const dW = w00 * w11 - w01 * w01;
    const ofUnit = 1 + w00 * w2 + w11 * u2 + dW * w2 * u2;
    const inverse = 1 / ofUnit;
    const p0 = (q0 + u2 * (w11 * q0 - w01 * q1)) * inverse;
    const p1 = (q1 + w2 * (w00 * q1 - w01 * q0)) * inverse;
    const a00 = (others[q] as number) + (w00 + dW * u2) * inverse;
    const a01 = (others[q + 1] as number) + w01 * inverse;
    const a11 = (others[q + 2] as number) + (w11 + dW * w2) * inverse;
    const b0 = (others[q + 3] as number) + p0;
    const b1 = (others[q + 4] as number) + p1;
    const f = (others[q + 5] as number) + (known[o + 5] as number) - w2 * q0 * p0 - u2 * q1 * p1;
    const determinant = a00 * a11 - a01 * a01;
    const ofDeterminant = 1 / determinant;
    const beta0 = (a11 * b0 - a01 * b1) * ofDeterminant;
    const beta1 = (a00 * b1 - a01 * b0) * ofDeterminant;
    const squares = residualSquares(f, b0 * beta0 + b1 * beta1);
    const logs = (others[q + 6] as number) + (known[o + 7] as number) + degrees * Math.log(squares);
    logWeight[node] = (before[node] as number) - 0.5 * logs;
    products[node] = determinant * ofUnit * (known[o + 6] as number);
    const ofRun = 1 / (1 + n * a2 + sxx * v2 + d * a2 * v2);
    const e0 = (1 + v2 * (sxx - x * sx)) * ofRun;
    const e1 = (x + a2 * (x * n - sx)) * ofRun;
    const k0 = (e0 + u2 * (e0 * w11 - e1 * w01)) * inverse;
    const k1 = (e1 + w2 * (e1 * w00 - e0 * w01)) * inverse;
    const noise = squares * perDegree;
    const ofGroup = (k0 * k0 * a11 - 2 * k0 * k1 * a01 + k1 * k1 * a00) * ofDeterminant;
    start[node] =
      posterior.yCentre + e0 * a2 * sy + e1 * v2 * sxy + k0 * (beta0 + w2 * q0) + k1 * (beta1 + u2 * q1);
    startStart[node] = noise * (e0 * a2 + e1 * v2 * x + k0 * w2 * e0 + k1 * u2 * e1 + ofGroup);
    s2[node] = noise;
  }
}

/** Weights the nodes, whose weights hold logarithms: the root of a product divides, which spares a logarithm a node. */
export function weighNodes(level: LevelAtNodes, { posterior }: NodeBase): void {
  const { line, products } = level;
  const { weight } = line;
  let most = Number.NEGATIVE_INFINITY;
  for (let node = 0; node < weight.length; node++) most = Math.max(most, weight[node] as number);
  let sum = 0;
  for (let node = 0; node < weight.length; node++) {
    const share = Math.exp((weight[node] as number) - most) / Math.sqrt(products[node] as number);
    weight[node] = share;
    sum += share;
  }
  let shift = 0;
  for (let node = 0; node < weight.length; node++) {
    const share = (weight[node] as number) / sum;
    weight[node] = share;
    shift += (share * share) / (posterior.weight[node] as number);
  }
  level.shift = shift;
}
