import { type Curvature, curvature } from './curvature';
import { type NormalScores, normalScores } from './normalScores';
import type { RunReadings } from './RunReadings';
import { largestResidualP, type StandardResiduals, standardResiduals } from './standardResiduals';
import type { RatioName, SdName, WearFit, WearPosterior, WearStatistics } from './types';

export { fitCheckSentences } from './fitCheckSentences';

/** The reading that lies farthest from the line of its own run. */
export interface LargestResidual {
  readonly unit: string;
  readonly run: string;
  /** Run hours / 10,000. */
  readonly x: number;
  readonly residual_mm: number;
  /** The residual in its own standard deviations. */
  readonly standardised: number;
  /** Chance of one as large, at most. */
  readonly p: number;
}

/** What a reader should know of a fit's shape, noise and boundaries before trusting its forecasts. */
export interface FitChecks {
  /** Null where the readings cannot show it. */
  readonly curvature: Curvature | null;
  /** Of the standardised residuals; null with too few of them. */
  readonly normalScores: NormalScores | null;
  /** Null without a residual. */
  readonly largest: LargestResidual | null;
  /** Share of the posterior weight at which a spread is under about a quarter of the noise of one reading. */
  readonly nearZero: Readonly<Record<RatioName, number>>;
  /** Standard deviations at zero in the REML fit. */
  readonly boundary: readonly SdName[];
  /** Every unit has one run: spread between units and between runs cannot be told apart. */
  readonly oneRunAUnit: boolean;
  readonly converged: boolean;
  readonly distinctX: number;
}

/**
 * A spread counts as near zero in full below the first share of the noise, not at all from the second, and in
 * proportion between, so that it hardly matters where the nodes lie. Slopes are taken over the root mean square of x.
 */
const [NEAR_ZERO, NOT_ZERO] = [1 / 8, 3 / 8];

/**
 * Checks of a fitted group: curvature, normal scores of the residuals, largest residual and boundaries.
 *
 * The residuals of one group are not quite independent: measured on simulated fleets their normal scores are
 * found abnormal at 5 % in 2 to 7 % of cases, curvature in 4 to 6 %, the largest residual in 1 to 7 %.
 * The readings are those of the statistics, in the order of its runs, with their weights. Throws if they are more or fewer.
 */
export function fitChecks(
  statistics: WearStatistics,
  fit: WearFit,
  posterior: WearPosterior,
  readings: RunReadings,
): FitChecks {
  const { length } = readings.x;
  if (length !== statistics.readings) {
    throw new Error(
      `fitChecks requires the ${statistics.readings} readings of its statistics, got ${length}`,
    );
  }
  const residuals = standardResiduals(statistics, fit, posterior, readings);
  return {
    curvature: curvature(statistics, fit, readings),
    normalScores: normalScores(residuals.standardised),
    largest: largestOf(residuals, statistics, readings),
    nearZero: nearZeroShares(statistics, posterior),
    boundary: fit.boundary,
    oneRunAUnit: statistics.runNames.length === statistics.unitNames.length,
    converged: fit.converged,
    distinctX: new Set(readings.x).size,
  };
}

function largestOf(
  { standardised, residual_mm, reading, run }: StandardResiduals,
  { unitNames, runNames, firstRun }: WearStatistics,
  { x }: RunReadings,
): LargestResidual | null {
  if (standardised.length === 0) return null;
  let most = 0;
  standardised.forEach((value, k) => {
    if (Math.abs(value) > Math.abs(standardised[most] as number)) most = k;
  });
  const ofRun = run[most] as number;
  const unit = firstRun.findIndex((first) => first > ofRun) - 1;
  return {
    unit: unitNames[unit] as string,
    run: runNames[ofRun] as string,
    x: x[reading[most] as number] as number,
    residual_mm: residual_mm[most] as number,
    standardised: standardised[most] as number,
    p: largestResidualP(standardised[most] as number, standardised.length, x.length),
  };
}

function nearZeroShares({ n, sxx }: WearStatistics, posterior: WearPosterior): FitChecks['nearZero'] {
  const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
  const rootMeanSquareX = Math.sqrt(sum(sxx) / sum(n));
  const nearness = (ratio: number) => Math.min(1, Math.max(0, (NOT_ZERO - ratio) / (NOT_ZERO - NEAR_ZERO)));
  const share = (ratios: Float64Array, scale: number) =>
    posterior.weight.reduce(
      (total, weight, k) => total + weight * nearness((ratios[k] as number) * scale),
      0,
    );
  return {
    startRun: share(posterior.startRun, 1),
    slopeRun: share(posterior.slopeRun, rootMeanSquareX),
    startUnit: share(posterior.startUnit, 1),
    slopeUnit: share(posterior.slopeUnit, rootMeanSquareX),
  };
}
