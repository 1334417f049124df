import { descendLine, lineState } from './descendLine';
import type { LineMixture, WearPosterior, WearStatistics } from './types';
import { SUMS, unitSums } from './unitSums';

/**
 * Level of a run as a mixture of Student t lines (start in mm, slope in mm per 10,000 h).
 *
 * unit is an index of statistics.unitNames, or null for a unit not seen; run is an index of statistics.runNames
 * (a run of that unit), or null for a new run. Mean at a node: G beta + H K[unit] q + K[run] r; covariance / s2:
 * K[run] + H K[unit] H' + G A^-1 G'. The statistics may be others than the posterior's, for example the same
 * unit up to an earlier overhaul. Throws if the run is not one of the unit.
 */
export function runLevel(
  posterior: WearPosterior,
  statistics: WearStatistics,
  unit: number | null,
  run: number | null,
): LineMixture {
  checkRun(statistics, unit, run);
  const size = posterior.weight.length;
  const start = new Float64Array(size);
  const slope = new Float64Array(size);
  const startStart = new Float64Array(size);
  const startSlope = new Float64Array(size);
  const slopeSlope = new Float64Array(size);
  const sums = unitSums(posterior, statistics, unit);
  const { n, sx, sxx, sy, sxy } = runSums(posterior, statistics, run);
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
    descendLine(line, w2, u2, s00, s01, s11, sums[p + 3] as number, sums[p + 4] as number);
    const a2 = (posterior.startRun[node] as number) ** 2;
    const v2 = (posterior.slopeRun[node] as number) ** 2;
    descendLine(line, a2, v2, n, sx, sxx, sy, sxy);
    const s2 = posterior.s2[node] as number;
    start[node] = posterior.yCentre + line.start;
    slope[node] = line.slope;
    startStart[node] = s2 * line.startStart;
    startSlope[node] = s2 * line.startSlope;
    slopeSlope[node] = s2 * line.slopeSlope;
  }
  const { weight, s2, table } = posterior;
  return { weight, start, slope, startStart, startSlope, slopeSlope, s2, table };
}

/** Sums of a run above the posterior's centre: n, Sx, Sxx, Sy, Sxy; zero for a run without readings (null). */
export function runSums(posterior: WearPosterior, statistics: WearStatistics, run: number | null) {
  if (run === null) return { n: 0, sx: 0, sxx: 0, sy: 0, sxy: 0 };
  const shift = statistics.yCentre - posterior.yCentre;
  const n = statistics.n[run] as number;
  const sx = statistics.sx[run] as number;
  const sxx = statistics.sxx[run] as number;
  const sy = (statistics.sy[run] as number) + shift * n;
  const sxy = (statistics.sxy[run] as number) + shift * sx;
  return { n, sx, sxx, sy, sxy };
}

function checkRun({ firstRun, unitNames }: WearStatistics, unit: number | null, run: number | null): void {
  if (unit !== null && !(unit >= 0 && unit < unitNames.length)) {
    throw new Error(`runLevel requires a unit below ${unitNames.length}, got ${unit}`);
  }
  if (run === null) return;
  const [first, end] = unit === null ? [0, 0] : [firstRun[unit] as number, firstRun[unit + 1] as number];
  if (!(run >= first && run < end)) {
    throw new Error(`runLevel requires a run of the unit, from ${first} and below ${end}, got ${run}`);
  }
}
