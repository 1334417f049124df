import type { FitRow, MarginRow, UnitRow } from '../../lib/analysis/types';
import { formatDate, formatHours, formatLevel, formatMm, formatRate } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import type { PresentRun } from '../example/presentRun';
import { counted } from './counted';
import { hasForecast } from './marginWords';
import { marginSentences } from './unitSentence';

/** How many readings the present run has, the latest of them, and how noisy one is. */
export function rowsWords(name: string, run: PresentRun | null, fit: FitRow | null): string {
  if (run === null)
    return `What is lacking: the hours of the unit now, so its present run in ${name} is not known.`;
  const latest = run.readings.at(-1);
  if (latest === undefined)
    return `What is lacking: a reading of ${name} in the present run. What is said below of this unit leans on its earlier runs and its sisters.`;
  const noise =
    fit === null || fit.sdNoise_mm === null
      ? 'how noisy one reading is cannot be told'
      : `one reading carries a noise of ${formatMm(fit.sdNoise_mm)} (standard deviation)`;
  return `${counted(run.readings.length, 'reading')} of ${name} ${run.readings.length === 1 ? 'belongs' : 'belong'} to the present run. The latest, of ${formatDate(latest.date)}, is ${formatMm(latest.value_mm)}; ${noise}.`;
}

/** Where the present run started, and how far it has come. */
export function runWords({ hoursNow, hoursSource }: UnitRow, run: PresentRun | null): string {
  if (run === null)
    return 'What is lacking: hours from plan.csv or from two overhauls, so run hours cannot be told.';
  const began =
    run.reset === null
      ? `started at ${formatHours(run.start_h)} on the unit`
      : `started on ${formatDate(run.reset.date)} at ${formatHours(run.start_h)} on the unit, by ${run.reset.by}`;
  const from = hoursSource === 'overhauls' ? 'the unit’s own overhauls' : 'the plan';
  return `The run ${began}. The unit stands at ${formatHours(hoursNow)} now, carried forward by ${from}: that makes ${formatHours(run.runHours)} in the run. Hours are taken as exact.`;
}

/** What the sister group’s fit found. */
export function groupWords(fit: FitRow | null): string {
  if (fit === null) return 'What is lacking: readings of the sister group, so there is no fit.';
  const data = `${counted(fit.units, 'unit')} of the sister group ${fit.group} gave ${counted(fit.readings, 'reading')} in ${counted(fit.runs, 'run')}.`;
  if (fit.reason !== null) return `${data} What is lacking: ${rewritten(fit.reason)}.`.replace('..', '.');
  return `${data} A run of the group starts at ${formatMm(fit.intercept_mm)} and wears by ${formatRate(fit.slope_mm_per_10kh, null)}; from unit to unit the rate differs by ${formatRate(fit.sdSlopeUnit_mm_per_10kh, null)}, and from run to run by ${formatRate(fit.sdSlopeRun_mm_per_10kh, null)} (standard deviations).`;
}

/** The level today and what is left to the limit. */
export function levelWords(unit: string, name: string, margin: MarginRow): string {
  const [level = ''] = marginSentences(unit, name, margin);
  if (margin.limit_mm === null) return `${level} What is lacking: a limit, so there is no margin.`;
  if (!hasForecast(margin) || margin.margin_mm === null) return `${level} What is lacking: a forecast.`;
  const source = margin.limitSource === null ? '' : ` (${margin.limitSource})`;
  const between = margin.limitKind === 'lower' ? 'level less limit' : 'limit less level';
  return `${level} The ${margin.limitKind ?? 'upper'} limit is ${formatMm(margin.limit_mm)}${source}; ${between}, the margin is ${formatLevel(margin.margin_mm, margin.levelSd_mm)}.`;
}

/** When the limit is met, and the chance by the next overhaul; or what is lacking for it. */
export function datesWords(unit: string, name: string, margin: MarginRow): string {
  return marginSentences(unit, name, margin).slice(1).join(' ');
}
