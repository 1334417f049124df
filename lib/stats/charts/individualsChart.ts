import { controlConstants } from './controlConstants';

/** A value outside the limits of a chart. */
export interface OutsideLimits {
  /** Position of the value, from 0. */
  readonly index: number;
  readonly side: 'upper' | 'lower';
  readonly value: number;
  readonly limit: number;
}

/** Individuals chart with moving ranges; limits in the units of the values. */
export interface IndividualsChart {
  readonly centre: number;
  /** Mean moving range / d2. */
  readonly sigma: number;
  readonly upper: number;
  /** Null where the series is looked at on its upper side only. */
  readonly lower: number | null;
  /** Range of each value and the one before it, from the second value on. */
  readonly movingRanges: readonly number[];
  readonly meanMovingRange: number;
  readonly movingRangeUpper: number;
  /** Values that centre and sigma come from: this many, from the first. */
  readonly baseline: number;
  readonly signals: readonly OutsideLimits[];
  /** Moving ranges above their limit, with the position of the later of the two values. */
  readonly rangeSignals: readonly OutsideLimits[];
}

const SIGMAS = 3;
const BASELINE = 20;
const ALL_BELOW = 30;

/** Number of values that a chart's baseline takes if the user says nothing: the first 20, or all of under 30. */
export function defaultBaseline(values: number): number {
  return values < ALL_BELOW ? values : BASELINE;
}

/**
 * Individuals chart: centre = mean, sigma = mean moving range / d2 (1.128), limits centre +/- 3 sigma; moving
 * ranges up to (1 + 3 d3 / d2) = 3.267 x their mean.
 *
 * Centre and sigma come from the first 'baseline' values. A value exactly on a limit is inside. With sides
 * 'upper', as for runout, which is never negative, there is no lower limit. Returns null where the baseline has
 * under 2 values or does not vary. Throws if a value is not finite. ISO 7870-2:2013, individuals charts.
 */
export function individualsChart(
  values: readonly number[],
  sides: 'both' | 'upper' = 'both',
  baseline = defaultBaseline(values.length),
): IndividualsChart | null {
  if (!values.every(Number.isFinite)) throw new Error('individualsChart requires finite values, got others');
  const first = values.slice(0, baseline);
  const movingRanges = rangesOf(values);
  const meanMovingRange = meanOf(rangesOf(first));
  if (first.length < 2 || !(meanMovingRange > 0)) return null;
  const { d2, d3 } = controlConstants(2);
  const centre = meanOf(first);
  const sigma = meanMovingRange / d2;
  const upper = centre + SIGMAS * sigma;
  const lower = sides === 'both' ? centre - SIGMAS * sigma : null;
  const movingRangeUpper = (1 + (SIGMAS * d3) / d2) * meanMovingRange;
  return {
    centre,
    sigma,
    upper,
    lower,
    movingRanges,
    meanMovingRange,
    movingRangeUpper,
    baseline: first.length,
    signals: outsideLimits(values, upper, lower),
    rangeSignals: outsideLimits(movingRanges, movingRangeUpper, null).map((signal) => ({
      ...signal,
      index: signal.index + 1,
    })),
  };
}

/** Values above the upper or below the lower limit, in order; a value on a limit is inside. */
export function outsideLimits(
  values: readonly number[],
  upper: number,
  lower: number | null,
): readonly OutsideLimits[] {
  return values.flatMap((value, index): OutsideLimits[] => {
    if (value > upper) return [{ index, side: 'upper', value, limit: upper }];
    if (lower !== null && value < lower) return [{ index, side: 'lower', value, limit: lower }];
    return [];
  });
}

function rangesOf(values: readonly number[]): readonly number[] {
  return values.slice(1).map((value, k) => Math.abs(value - (values[k] as number)));
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
