import type { WearWorkspace } from './absorb';
import type { GroupSolution } from './solveGroup';

/**
 * Derivatives of degrees log RSS + log determinants + log |A| by the four squared ratios.
 *
 * At any level, with the line known from above as m with covariance V (in units of s2), the derivative by the
 * k-th squared ratio is the sum over members of [W - W V W]_kk - c (q - W m)_k squared, where W and q are the
 * member's sums after absorption and c = degrees / RSS. For units (m, V) is (beta, A^-1); for runs it is the
 * unit's own line m = H beta + K r, V = K + H A^-1 H' with H = (I + D S)^-1. Derived from dW = -W dD W,
 * dq = -W dD q, dqq = -q' dD q, d log|I + S D| = tr(W dD). Writes startRun, slopeRun, startUnit, slopeUnit;
 * workspace.units must hold the sums of the same a2 and v2.
 */
export function ratioGradient(
  { statistics, runs, units }: WearWorkspace,
  solution: GroupSolution,
  squared: Float64Array,
  degrees: number,
  gradient: Float64Array,
): void {
  const { firstRun } = statistics;
  const { beta0, beta1, inverse00, inverse01, inverse11 } = solution;
  const c = degrees / solution.residualSquares;
  const a2 = squared[0] as number;
  const v2 = squared[1] as number;
  const w2 = squared[2] as number;
  const u2 = squared[3] as number;
  const a2v2 = a2 * v2;
  let startRun = 0;
  let slopeRun = 0;
  let startUnit = 0;
  let slopeUnit = 0;
  for (let unit = 0, o = 0; o < units.length; unit++, o += 6) {
    const s00 = units[o] as number;
    const s01 = units[o + 1] as number;
    const s11 = units[o + 2] as number;
    const r0 = units[o + 3] as number;
    const r1 = units[o + 4] as number;
    const dS = s00 * s11 - s01 * s01;
    const inverse = 1 / (1 + s00 * w2 + s11 * u2 + dS * w2 * u2);
    const w00 = (s00 + dS * u2) * inverse;
    const w01 = s01 * inverse;
    const w11 = (s11 + dS * w2) * inverse;
    const e0 = (r0 + u2 * (s11 * r0 - s01 * r1)) * inverse - w00 * beta0 - w01 * beta1;
    const e1 = (r1 + w2 * (s00 * r1 - s01 * r0)) * inverse - w01 * beta0 - w11 * beta1;
    startUnit +=
      w00 - (w00 * w00 * inverse00 + 2 * w00 * w01 * inverse01 + w01 * w01 * inverse11) - c * e0 * e0;
    slopeUnit +=
      w11 - (w01 * w01 * inverse00 + 2 * w01 * w11 * inverse01 + w11 * w11 * inverse11) - c * e1 * e1;
    const h00 = (1 + u2 * s11) * inverse;
    const h01 = -w2 * s01 * inverse;
    const h10 = -u2 * s01 * inverse;
    const h11 = (1 + w2 * s00) * inverse;
    // K = H D, so K r = H (D r).
    const m0 = h00 * (beta0 + w2 * r0) + h01 * (beta1 + u2 * r1);
    const m1 = h10 * (beta0 + w2 * r0) + h11 * (beta1 + u2 * r1);
    const g00 = h00 * inverse00 + h01 * inverse01;
    const g01 = h00 * inverse01 + h01 * inverse11;
    const v00 = h00 * w2 + g00 * h00 + g01 * h01;
    const v01 = h01 * u2 + g00 * h10 + g01 * h11;
    const v11 = h11 * u2 + h10 * h10 * inverse00 + 2 * h10 * h11 * inverse01 + h11 * h11 * inverse11;
    const end = 10 * (firstRun[unit + 1] as number);
    for (let p = 10 * (firstRun[unit] as number); p < end; p += 10) {
      const n = runs[p] as number;
      const sx = runs[p + 1] as number;
      const sxx = runs[p + 2] as number;
      const sy = runs[p + 3] as number;
      const sxy = runs[p + 4] as number;
      const d = runs[p + 5] as number;
      const share = 1 / (1 + n * a2 + sxx * v2 + d * a2v2);
      const x00 = (n + d * v2) * share;
      const x01 = sx * share;
      const x11 = (sxx + d * a2) * share;
      const f0 = (sy + v2 * (sxx * sy - sx * sxy)) * share - x00 * m0 - x01 * m1;
      const f1 = (sxy + a2 * (n * sxy - sx * sy)) * share - x01 * m0 - x11 * m1;
      startRun += x00 - (x00 * x00 * v00 + 2 * x00 * x01 * v01 + x01 * x01 * v11) - c * f0 * f0;
      slopeRun += x11 - (x01 * x01 * v00 + 2 * x01 * x11 * v01 + x11 * x11 * v11) - c * f1 * f1;
    }
  }
  gradient[0] = startRun;
  gradient[1] = slopeRun;
  gradient[2] = startUnit;
  gradient[3] = slopeUnit;
}
