import type { MarginRow } from '../../lib/analysis/types';
import { isPastNow } from '../../lib/analysis/urgency';
import { forecastReach, formatDate, formatHours, formatLength, formatMm } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { capitalised } from './seriesName';

/** Whether there is a chance of being past the limit now: everything else of a forecast follows from it. */
export function hasForecast(margin: MarginRow): boolean {
  return margin.chanceNow !== null;
}

/** Whether the level is past its limit now. */
export function isPast(margin: MarginRow): boolean {
  return isPastNow(margin);
}

/** One point of a limit: date and hours from now, or that it lies beyond the reach of a forecast. */
export function pointWords(hours: number | null, date: string | null): string {
  if (hours === null) return `beyond ${forecastReach()}`;
  if (hours === 0) return 'now';
  return date === null ? `in ${formatHours(hours)}` : `${formatDate(date)} (in ${formatHours(hours)})`;
}

/** One point of a margin's limit, or null where there is no limit or no forecast. */
export function pointText(margin: MarginRow, hours: number | null, date: string | null): string | null {
  return hasForecast(margin) ? pointWords(hours, date) : null;
}

/** The range of the reading expected at the next overhaul: 10, 50 and 90 %; null if there is none. */
export function expectedRange(margin: MarginRow): string | null {
  const { expectedFoundLower_mm, expectedFoundMedian_mm, expectedFoundUpper_mm } = margin;
  if (expectedFoundLower_mm === null || expectedFoundMedian_mm === null || expectedFoundUpper_mm === null) {
    return null;
  }
  return `${formatLength(expectedFoundLower_mm)} / ${formatLength(expectedFoundMedian_mm)} / ${formatMm(expectedFoundUpper_mm)}`;
}

/** Why a margin with a limit has no forecast, as a sentence; null if it has one. */
export function noForecastSentence(margin: MarginRow): string | null {
  if (hasForecast(margin) || margin.limit_mm === null) return null;
  return `No forecast: ${rewritten(margin.reason ?? 'no reason given').replace(/\.$/, '')}.`;
}

/** Cautions that bound a forecast, as sentences. */
export function marginCautions(margin: MarginRow): readonly string[] {
  if (!hasForecast(margin)) return [];
  const sentences = [
    margin.reason !== null && `${capitalised(rewritten(margin.reason)).replace(/\.$/, '')}.`,
    margin.cappedByRatedLife &&
      margin.hoursEarly !== margin.hoursLate &&
      'Capped by the rated life: a date at its end stands for the rated life, not for the limit.',
    margin.extrapolated &&
      'Reaches beyond the run hours ever observed in the group: an extrapolation, no reason for a longer interval.',
  ];
  return sentences.filter((sentence) => sentence !== false);
}

/** Why there is no verdict or forecast, or what bounds the one there is; null if there is nothing to remark. */
export function marginRemark(margin: MarginRow): string | null {
  if (margin.limit_mm === null) return 'No limit, no verdict.';
  const none = noForecastSentence(margin);
  if (none !== null) return none;
  const sentences = marginCautions(margin);
  return sentences.length === 0 ? null : sentences.join(' ');
}
