import { descendLine, lineState } from './descendLine';
import type { LineMixture, WearPosterior, WearStatistics } from './types';
import { SUMS, unitSums } from './unitSums';

/**
 * Wear rate of a unit and of its sisters jointly: the mixture's start is the unit's rate b1 + u[unit], its slope
 * the group's rate b1, both mm per 10,000 h, with their covariance.
 *
 * The unit's rate alone is levelAt(mixture, 0); the chance that the unit's rate is past c times the group's is
 * chancePast(mixture, 0, 'upper', -c). unit null stands for a unit not seen.
 */
export function unitRate(
  posterior: WearPosterior,
  statistics: WearStatistics,
  unit: number | null,
): LineMixture {
  const size = posterior.weight.length;
  const start = new Float64Array(size);
  const startStart = new Float64Array(size);
  const startSlope = new Float64Array(size);
  const slopeSlope = new Float64Array(size);
  const sums = unitSums(posterior, statistics, unit);
  const line = lineState();
  for (let node = 0; node < size; node++) {
    line.start = posterior.beta0[node] as number;
    line.slope = posterior.beta1[node] as number;
    line.startStart = posterior.inverse00[node] as number;
    line.startSlope = posterior.inverse01[node] as number;
    line.slopeSlope = posterior.inverse11[node] as number;
    const p = SUMS * (posterior.runPair[node] as number);
    const w2 = (posterior.startUnit[node] as number) ** 2;
    const u2 = (posterior.slopeUnit[node] as number) ** 2;
    const [s00, s01, s11] = [sums[p] as number, sums[p + 1] as number, sums[p + 2] as number];
    // The unit's slope is h10 (...) + h11 (...): its covariance with b1 is that row of H A^-1.
    const inverse = 1 / (1 + s00 * w2 + s11 * u2 + (s00 * s11 - s01 * s01) * w2 * u2);
    const withGroup = (1 + w2 * s00) * inverse * line.slopeSlope - u2 * s01 * inverse * line.startSlope;
    const s2 = posterior.s2[node] as number;
    startSlope[node] = s2 * withGroup;
    slopeSlope[node] = s2 * line.slopeSlope;
    descendLine(line, w2, u2, s00, s01, s11, sums[p + 3] as number, sums[p + 4] as number);
    start[node] = line.slope;
    startStart[node] = s2 * line.slopeSlope;
  }
  const { weight, s2, beta1, table } = posterior;
  return { weight, start, slope: beta1, startStart, startSlope, slopeSlope, s2, table };
}
