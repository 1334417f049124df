import type { WearStatistics } from './types';

/** Numbers a run: n, Sx, Sxx, Sy, Sxy, then the products that make absorption free of differences. */
export const RUN = 10;
/** Numbers a unit: W00, W01, W11, q0, q1, qq. */
export const UNIT = 6;
/** A determinant product is turned into a logarithm before it can overflow. */
const LARGE = 1e200;

/** Arrays that every evaluation of one group's model reads and writes; made once, then nothing is allocated. */
export interface WearWorkspace {
  readonly statistics: WearStatistics;
  readonly runs: Float64Array;
  /** Sums over each unit's runs after the run level was absorbed. */
  readonly units: Float64Array;
  /** Sums over units after the unit level was absorbed: A00, A01, A11, b0, b1, f. */
  readonly group: Float64Array;
  /** What `units` was absorbed for: a2, v2 and the sum of logarithms that came of it; a2 is not a number before the first time. */
  readonly absorbed: Float64Array;
}

/** Makes the workspace of a group: per run the sums and their products, see absorbRuns. */
export function wearWorkspace(statistics: WearStatistics): WearWorkspace {
  const { n, sx, sxx, sy, sxy, syy, sxxCentred, sxyCentred, syyCentred } = statistics;
  const runs = new Float64Array(RUN * n.length);
  for (let r = 0; r < n.length; r++) {
    fillRun(
      runs,
      RUN * r,
      n[r] as number,
      sx[r] as number,
      sy[r] as number,
      sxx[r] as number,
      sxy[r] as number,
      syy[r] as number,
      sxxCentred[r] as number,
      sxyCentred[r] as number,
      syyCentred[r] as number,
    );
  }
  return {
    statistics,
    runs,
    units: new Float64Array(UNIT * statistics.unitNames.length),
    group: new Float64Array(6),
    absorbed: new Float64Array(3).fill(Number.NaN),
  };
}

/** Writes one run at place p: its sums, and their products from those about its own means (xx, xy, yy). */
export function fillRun(
  runs: Float64Array,
  p: number,
  n: number,
  sx: number,
  sy: number,
  sxx: number,
  sxy: number,
  syy: number,
  xx: number,
  xy: number,
  yy: number,
): void {
  const meanX = sx / n;
  const meanY = sy / n;
  // |S|, and the Gram determinants of (1, y), (x, y) and (1, x, y): all sums of squares, never negative.
  const gramXY = xx * yy - xy * xy + n * (xx * meanY * meanY - 2 * xy * meanX * meanY + yy * meanX * meanX);
  runs[p] = n;
  runs[p + 1] = sx;
  runs[p + 2] = sxx;
  runs[p + 3] = sy;
  runs[p + 4] = sxy;
  runs[p + 5] = n * xx;
  runs[p + 6] = syy;
  runs[p + 7] = n * yy;
  runs[p + 8] = Math.max(0, gramXY);
  runs[p + 9] = Math.max(0, n * (xx * yy - xy * xy));
}

/**
 * Absorbs the run level for the squared ratios a2 (start) and v2 (slope) and sums over each unit's runs.
 *
 * With D = diag(a2, v2): W = (I + S D)^-1 S, q = (I + S D)^-1 r, qq = Syy - r' D (I + S D)^-1 r, written as
 * quotients of positive sums over |I + S D| so that nothing cancels and zero ratios are allowed. The same as
 * W = S - S K S, q = r - S K r, qq = Syy - r' K r with K = (D^-1 + S)^-1. Returns the sum of log |I + S D|.
 * Asked for the same two ratios again, as searches over the units' ratios do, it leaves the sums as they are.
 */
export function absorbRuns(
  { statistics, runs, units, absorbed }: WearWorkspace,
  a2: number,
  v2: number,
): number {
  if (absorbed[0] === a2 && absorbed[1] === v2) return absorbed[2] as number;
  const { firstRun } = statistics;
  const a2v2 = a2 * v2;
  let product = 1;
  let logDeterminant = 0;
  for (let unit = 0, o = 0; o < units.length; unit++, o += UNIT) {
    let w00 = 0;
    let w01 = 0;
    let w11 = 0;
    let q0 = 0;
    let q1 = 0;
    let qq = 0;
    const end = RUN * (firstRun[unit + 1] as number);
    for (let p = RUN * (firstRun[unit] as number); p < end; p += RUN) {
      const n = runs[p] as number;
      const sx = runs[p + 1] as number;
      const sxx = runs[p + 2] as number;
      const sy = runs[p + 3] as number;
      const sxy = runs[p + 4] as number;
      const d = runs[p + 5] as number;
      const determinant = 1 + n * a2 + sxx * v2 + d * a2v2;
      const inverse = 1 / determinant;
      w00 += (n + d * v2) * inverse;
      w01 += sx * inverse;
      w11 += (sxx + d * a2) * inverse;
      q0 += (sy + v2 * (sxx * sy - sx * sxy)) * inverse;
      q1 += (sxy + a2 * (n * sxy - sx * sy)) * inverse;
      const gram =
        a2 * (runs[p + 7] as number) + v2 * (runs[p + 8] as number) + a2v2 * (runs[p + 9] as number);
      qq += ((runs[p + 6] as number) + gram) * inverse;
      product *= determinant;
      if (product > LARGE) {
        logDeterminant += Math.log(product);
        product = 1;
      }
    }
    units[o] = w00;
    units[o + 1] = w01;
    units[o + 2] = w11;
    units[o + 3] = q0;
    units[o + 4] = q1;
    units[o + 5] = qq;
  }
  logDeterminant += Math.log(product);
  absorbed[0] = a2;
  absorbed[1] = v2;
  absorbed[2] = logDeterminant;
  return logDeterminant;
}

/**
 * Absorbs the unit level for the squared ratios w2 (start) and u2 (slope) and sums over units into
 * workspace.group: A (three numbers), b (two) and f. Returns the sum of log |I + W D|.
 */
export function absorbUnits(
  { units, group }: Pick<WearWorkspace, 'units' | 'group'>,
  w2: number,
  u2: number,
): number {
  let product = 1;
  let logDeterminant = 0;
  let a00 = 0;
  let a01 = 0;
  let a11 = 0;
  let b0 = 0;
  let b1 = 0;
  let f = 0;
  for (let o = 0; o < units.length; o += UNIT) {
    const w00 = units[o] as number;
    const w01 = units[o + 1] as number;
    const w11 = units[o + 2] as number;
    const q0 = units[o + 3] as number;
    const q1 = units[o + 4] as number;
    const d = w00 * w11 - w01 * w01;
    const determinant = 1 + w00 * w2 + w11 * u2 + d * w2 * u2;
    const inverse = 1 / determinant;
    const p0 = (q0 + u2 * (w11 * q0 - w01 * q1)) * inverse;
    const p1 = (q1 + w2 * (w00 * q1 - w01 * q0)) * inverse;
    a00 += (w00 + d * u2) * inverse;
    a01 += w01 * inverse;
    a11 += (w11 + d * w2) * inverse;
    b0 += p0;
    b1 += p1;
    f += (units[o + 5] as number) - w2 * q0 * p0 - u2 * q1 * p1;
    product *= determinant;
    if (product > LARGE) {
      logDeterminant += Math.log(product);
      product = 1;
    }
  }
  group[0] = a00;
  group[1] = a01;
  group[2] = a11;
  group[3] = b0;
  group[4] = b1;
  group[5] = f;
  return logDeterminant + Math.log(product);
}
