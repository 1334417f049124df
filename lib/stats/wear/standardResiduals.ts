import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import { absorbRuns, absorbUnits, wearWorkspace } from './absorb';
import { forEachReading, type RunReadings } from './RunReadings';
import { runLevel } from './runLevel';
import { groupSolution, solveGroup } from './solveGroup';
import type { LineMixture, WearFit, WearPosterior, WearStatistics } from './types';

/** Distances of readings from their own runs' lines, column by column. */
export interface StandardResiduals {
  /** Places of the readings. */
  readonly reading: Int32Array;
  readonly run: Int32Array;
  /** Reading less its run's level, mm. */
  readonly residual_mm: Float64Array;
  /** The same in its own standard deviations. */
  readonly standardised: Float64Array;
}

/** Readings that their own run's line follows closer than this share of the noise variance say nothing. */
const LEAST_FREE = 1e-6;

/**
 * Residuals about each run's own level at the REML fit, standardised by their own standard deviations.
 *
 * Residual = y - (start + slope x) of the run; with C the covariance / s2 of that line and w the reading's weight
 * its variance is s2 (1 / w - (1, x) C (1, x)'). Readings whose line follows them entirely are left out.
 */
export function standardResiduals(
  statistics: WearStatistics,
  fit: WearFit,
  posterior: WearPosterior,
  readings: RunReadings,
): StandardResiduals {
  const lineOf = runLines(statistics, atFit(statistics, fit, posterior));
  const size = readings.x.length;
  const [residual_mm, standardised] = [new Float64Array(size), new Float64Array(size)];
  const [places, runs] = [new Int32Array(size), new Int32Array(size)];
  let kept = 0;
  forEachReading(statistics, readings, (run, x, y, weight, reading) => {
    const { start, slope, startStart, startSlope, slopeSlope } = lineOf(run);
    const free = 1 - weight * (at0(startStart) + x * (2 * at0(startSlope) + x * at0(slopeSlope)));
    if (!(free > LEAST_FREE)) return;
    const residual = y - (at0(start) + at0(slope) * x);
    residual_mm[kept] = residual;
    standardised[kept] = residual / (fit.sdNoise_mm * Math.sqrt(free / weight));
    places[kept] = reading;
    runs[kept++] = run;
  });
  return {
    reading: places.subarray(0, kept),
    run: runs.subarray(0, kept),
    residual_mm: residual_mm.subarray(0, kept),
    standardised: standardised.subarray(0, kept),
  };
}

/**
 * Chance that the largest of n standardised residuals is this large or larger, at most (Bonferroni).
 *
 * With nu = N - 2, t = r sqrt((nu - 1) / (nu - r squared)) is Student t with nu - 1 degrees of freedom given the
 * ratios. Cook and Weisberg 1982, Residuals and Influence in Regression, section 2.2.2.
 */
export function largestResidualP(standardised: number, n: number, readings: number): number {
  const nu = readings - 2;
  const squared = standardised * standardised;
  const t = Math.sqrt((squared * (nu - 1)) / Math.max(1e-9, nu - squared));
  return Math.min(1, 2 * n * studentCdf(-t, nu - 1));
}

/** The fit as a posterior of one node with noise variance 1, so that runLevel gives its lines and C. */
function atFit(statistics: WearStatistics, { ratios }: WearFit, posterior: WearPosterior): WearPosterior {
  const workspace = wearWorkspace(statistics);
  absorbRuns(workspace, ratios.startRun ** 2, ratios.slopeRun ** 2);
  absorbUnits(workspace, ratios.startUnit ** 2, ratios.slopeUnit ** 2);
  const solution = groupSolution();
  solveGroup(workspace, solution);
  return {
    ...posterior,
    weight: Float64Array.of(1),
    startRun: Float64Array.of(ratios.startRun),
    slopeRun: Float64Array.of(ratios.slopeRun),
    startUnit: Float64Array.of(ratios.startUnit),
    slopeUnit: Float64Array.of(ratios.slopeUnit),
    beta0: Float64Array.of(solution.beta0),
    beta1: Float64Array.of(solution.beta1),
    inverse00: Float64Array.of(solution.inverse00),
    inverse01: Float64Array.of(solution.inverse01),
    inverse11: Float64Array.of(solution.inverse11),
    s2: Float64Array.of(1),
    runPair: Int32Array.of(0),
    runPairs: 1,
    yCentre: statistics.yCentre,
  };
}

/** Line of a run; asked for in order, since one unit and line at a time is remembered. */
function runLines(statistics: WearStatistics, node: WearPosterior): (run: number) => LineMixture {
  let [unit, last] = [0, -1];
  let line: LineMixture | null = null;
  return (run) => {
    while (run >= (statistics.firstRun[unit + 1] as number)) unit += 1;
    if (line === null || run !== last) line = runLevel(node, statistics, unit, run);
    last = run;
    return line;
  };
}

function at0(values: Float64Array): number {
  return values[0] as number;
}
