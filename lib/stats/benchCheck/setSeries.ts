import { clockPositions } from '../clock/clockPositions';
import type { ReadEnds } from './conformity';

/** Series that follow from a set of clock readings. */
export type SetSeries = 'largest' | 'smallest' | 'mean' | 'offset';

/** SD of a set's series in SDs of one reading: largest and smallest are readings, mean s / 2, offset s / sqrt 2. */
export const setSpread: Readonly<Record<SetSeries, number>> = {
  largest: 1,
  smallest: 1,
  mean: 1 / 2,
  offset: Math.SQRT1_2,
};

/**
 * A series of a set of clock readings, mm, in order of 12, 3, 6 and 9 o'clock, with both ends where a reading is an interval.
 *
 * Of three positions the fourth follows with no ovality, as everywhere. Largest and smallest of fewer are those read so far;
 * mean and offset are null under three. An end that was not read ('> 0.40') leaves the largest without an upper end.
 */
export function setSeries(readings: readonly (ReadEnds | null)[], series: SetSeries): ReadEnds | null {
  const known = readings.filter((one) => one !== null);
  if (known.length === 0) return null;
  const [c12 = null, c3 = null, c6 = null, c9 = null] = readings.map((one) =>
    one === null ? null : one.upper_mm === null ? one.lower_mm : (one.lower_mm + one.upper_mm) / 2,
  );
  const whole = clockPositions({ c12, c3, c6, c9 });
  if (series === 'mean' || series === 'offset') {
    if (whole === null) return null;
    const value = series === 'mean' ? whole.mean_mm : whole.offset_mm;
    return { lower_mm: value, upper_mm: value };
  }
  const fourth = whole === null || known.length === 4 ? [] : [4 * whole.mean_mm - sum([c12, c3, c6, c9])];
  const all = [...known, ...fourth.map((value) => ({ lower_mm: value, upper_mm: value }))];
  const lowers = all.map(({ lower_mm }) => lower_mm);
  const uppers = all.map(({ upper_mm }) => upper_mm ?? Number.POSITIVE_INFINITY);
  const choose = series === 'largest' ? Math.max : Math.min;
  const upper_mm = choose(...uppers);
  return { lower_mm: choose(...lowers), upper_mm: Number.isFinite(upper_mm) ? upper_mm : null };
}

function sum(values: readonly (number | null)[]): number {
  return values.reduce<number>((total, value) => total + (value ?? 0), 0);
}
