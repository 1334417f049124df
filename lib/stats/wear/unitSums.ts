import type { WearPosterior, WearStatistics } from './types';

/** Numbers a pair of run ratios: W00, W01, W11, q0, q1. */
export const SUMS = 5;

/**
 * One unit's runs absorbed at every pair of run ratios of the posterior: W and q summed over its runs.
 *
 * A unit that is not known (null) has no runs and sums of zero. Readings are taken above the posterior's centre.
 */
export function unitSums(
  posterior: WearPosterior,
  statistics: WearStatistics,
  unit: number | null,
): Float64Array {
  const sums = new Float64Array(SUMS * posterior.runPairs);
  if (unit === null) return sums;
  const { n, sx, sxx, sxxCentred } = statistics;
  const shift = statistics.yCentre - posterior.yCentre;
  const first = statistics.firstRun[unit] as number;
  const end = statistics.firstRun[unit + 1] as number;
  let done = -1;
  for (let node = 0; node < posterior.runPair.length; node++) {
    const pair = posterior.runPair[node] as number;
    if (pair === done) continue;
    done = pair;
    const a2 = (posterior.startRun[node] as number) ** 2;
    const v2 = (posterior.slopeRun[node] as number) ** 2;
    const p = SUMS * pair;
    for (let r = first; r < end; r++) {
      const s00 = n[r] as number;
      const s01 = sx[r] as number;
      const s11 = sxx[r] as number;
      const r0 = (statistics.sy[r] as number) + shift * s00;
      const r1 = (statistics.sxy[r] as number) + shift * s01;
      const d = s00 * (sxxCentred[r] as number);
      const inverse = 1 / (1 + s00 * a2 + s11 * v2 + d * a2 * v2);
      sums[p] = (sums[p] as number) + (s00 + d * v2) * inverse;
      sums[p + 1] = (sums[p + 1] as number) + s01 * inverse;
      sums[p + 2] = (sums[p + 2] as number) + (s11 + d * a2) * inverse;
      sums[p + 3] = (sums[p + 3] as number) + (r0 + v2 * (s11 * r0 - s01 * r1)) * inverse;
      sums[p + 4] = (sums[p + 4] as number) + (r1 + a2 * (s00 * r1 - s01 * r0)) * inverse;
    }
  }
  return sums;
}
