import { wearWorkspace } from './absorb';
import { leavesScatter } from './leavesScatter';
import { minimiseRatios, type RatioMinimum } from './minimiseRatios';
import { type RatioCriterion, ratioCriterion } from './ratioCriterion';
import { ratioScale } from './ratioScale';
import type { SdName, WearFit, WearStatistics } from './types';

/** Starting points on the fitting scale: start run, slope run, start unit, slope unit. */
const STARTS: readonly (readonly number[])[] = [
  [0.7, 0.7, 0.7, 0.7],
  [0.2, 0.2, 1.2, 1.2],
  [1.2, 1.2, 0.2, 0.2],
  [2.5, 2.5, 2.5, 2.5],
];
const LARGE_GROUP = 1000;
const SD_NAMES: readonly SdName[] = ['sdStartRun', 'sdSlopeRun', 'sdStartUnit', 'sdSlopeUnit'];

/**
 * Restricted maximum likelihood fit of y = (b0 + w[unit] + a[run]) + (b1 + u[unit] + v[run]) x + e.
 *
 * x is run hours / 10,000, y mm; the five terms are independent normal. The criterion is
 * nu (1 + log(2 pi s2)) + log determinants + log |A|, nu = N - 2, s2 = RSS / nu, as lme4's REMLcrit; interval
 * readings add minus the sum of their log weights. runLevels false fixes the run spreads at zero; the default
 * does so where every unit has a single run, because run and unit spread are then not separable.
 * Throws below 3 readings, where all readings lie at the same run hours, or where they leave no scatter.
 * Bates, Maechler, Bolker and Walker 2015, Journal of Statistical Software 67(1), equations 41 and 42.
 */
export function fitWear(statistics: WearStatistics, options: { runLevels?: boolean } = {}): WearFit {
  const runs = statistics.runNames.length;
  const units = statistics.unitNames.length;
  const { runLevels = runs > units } = options;
  const degrees = statistics.readings - 2;
  const criterion = ratioCriterion(wearWorkspace(statistics), degrees);
  checkData(statistics, criterion);
  const free = runLevels ? [0, 1, 2, 3] : [2, 3];
  const scale = ratioScale(statistics);
  const starts = STARTS.slice(0, runs > LARGE_GROUP ? 1 : STARTS.length);
  const best = starts
    .map((start) => Float64Array.from(start, (psi, j) => (free.includes(j) ? psi : 0)))
    .map((start) => minimiseRatios(criterion, scale, start, free))
    .reduce(better);
  const ratios = best.psi.map((psi, j) => Math.abs(Math.sinh(psi) / (scale[j] as number)));
  return record(statistics, criterion, ratios, best.converged, free);
}

function better(one: RatioMinimum, other: RatioMinimum): RatioMinimum {
  return other.value < one.value - 1e-9 ? other : one;
}

function record(
  statistics: WearStatistics,
  criterion: RatioCriterion,
  ratios: Float64Array,
  converged: boolean,
  free: readonly number[],
): WearFit {
  const degrees = statistics.readings - 2;
  criterion.squared.set(ratios.map((ratio) => ratio * ratio));
  const value = criterion.evaluate(false);
  const { beta0, beta1, inverse00, inverse11, residualSquares } = criterion.solution;
  const noise = Math.sqrt(residualSquares / degrees);
  const [startRun, slopeRun, startUnit, slopeUnit] = ratios as unknown as [number, number, number, number];
  return {
    intercept_mm: statistics.yCentre + beta0,
    slope_mm_per_10kh: beta1,
    interceptSe_mm: noise * Math.sqrt(inverse00),
    slopeSe_mm_per_10kh: noise * Math.sqrt(inverse11),
    sdNoise_mm: noise,
    sdStartRun_mm: noise * startRun,
    sdSlopeRun_mm_per_10kh: noise * slopeRun,
    sdStartUnit_mm: noise * startUnit,
    sdSlopeUnit_mm_per_10kh: noise * slopeUnit,
    ratios: { startRun, slopeRun, startUnit, slopeUnit },
    remlCriterion: value + degrees * (1 + Math.log((2 * Math.PI) / degrees)) - statistics.logWeightSum,
    boundary: free.filter((j) => ratios[j] === 0).map((j) => SD_NAMES[j] as SdName),
    converged,
    evaluations: criterion.evaluations(),
    units: statistics.unitNames.length,
    runs: statistics.runNames.length,
    readings: statistics.readings,
  };
}

function checkData(statistics: WearStatistics, criterion: RatioCriterion): void {
  const { readings } = statistics;
  if (readings < 3) throw new Error(`fitWear requires at least 3 readings, got ${readings}`);
  criterion.evaluate(false);
  const { inverse00, residualSquares } = criterion.solution;
  if (!Number.isFinite(inverse00)) throw new Error('fitWear requires 2 distinct run hours, got 1');
  if (!leavesScatter(statistics, residualSquares)) {
    throw new Error(`fitWear requires readings that scatter about a line, got ${readings} on one line`);
  }
}
