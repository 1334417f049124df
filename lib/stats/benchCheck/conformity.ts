import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';

/** What a reading with its uncertainty says of a range. */
export type Conformity = 'within' | 'not within' | 'cannot be told apart';

/** What was read, mm: both ends are the same for a plain reading; no upper end where the largest feeler still goes. */
export interface ReadEnds {
  readonly lower_mm: number;
  readonly upper_mm: number | null;
}

/** A range that a reading must keep to, mm; an end that is not given does not bound it. */
export interface Range {
  readonly lower_mm: number | null;
  readonly upper_mm: number | null;
}

/** Width of the guard band in standard uncertainties: one-sided 95 %. */
export const guardFactor: number = normalQuantile(0.95, 0, 1);

/**
 * Whether a reading keeps to a range, with a guard band of 1.645 standard uncertainties on either side of each end.
 *
 * An interval reading counts by its middle with its width squared / 12 added to the variance; one without an upper end bounds
 * from below only. Throws unless the standard uncertainty (mm) is finite and not negative. ISO 14253-1:
 * conformity and nonconformity are each stated only beyond the uncertainty.
 */
export function conformity(reading: ReadEnds, range: Range, uncertainty_mm: number): Conformity {
  if (!(uncertainty_mm >= 0 && Number.isFinite(uncertainty_mm)))
    throw new Error(`conformity requires a standard uncertainty of 0 mm or more, got ${uncertainty_mm}`);
  const { lower_mm, upper_mm } = reading;
  const middle = upper_mm === null ? lower_mm : (lower_mm + upper_mm) / 2;
  const width = upper_mm === null ? 0 : upper_mm - lower_mm;
  const guard = guardFactor * Math.sqrt(uncertainty_mm ** 2 + width ** 2 / 12);
  const least = middle - guard;
  const most = upper_mm === null ? Number.POSITIVE_INFINITY : middle + guard;
  const from = range.lower_mm ?? Number.NEGATIVE_INFINITY;
  const to = range.upper_mm ?? Number.POSITIVE_INFINITY;
  // Sums of decimals are off by rounding: a reading on the end of its guard band is still within.
  const rounding = 1e-9;
  if (least > to + rounding || most < from - rounding) return 'not within';
  return least >= from - rounding && most <= to + rounding ? 'within' : 'cannot be told apart';
}
