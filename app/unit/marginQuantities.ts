import type { MarginRow } from '../../lib/analysis/types';
import {
  formatChance,
  formatDate,
  formatHours,
  formatLevel,
  formatMm,
  formatRate,
} from '../../lib/charts/format';
import type { SavedColumn } from '../table/DataColumn';
import { expectedRange, marginRemark, pointText } from '../words/marginWords';
import type { TermName } from '../words/terms';

/** One line of the table of margins. */
export interface Quantity {
  readonly name: string;
  /** The term that the name is, if it is one. */
  readonly term?: TermName;
  readonly text: (margin: MarginRow) => string | null;
  readonly reason?: string;
  /** The bare numbers of a saved table, each with its unit; the text itself if not given. */
  readonly saved?: readonly SavedColumn<MarginRow>[];
}

/** A point of a limit: hours from now and date. */
function point(
  term: 'early' | 'median' | 'late',
  name: string,
  hours: (margin: MarginRow) => number | null,
  date: (margin: MarginRow) => string | null,
): Quantity {
  return {
    name,
    term,
    text: (margin) => pointText(margin, hours(margin), date(margin)),
    saved: [
      { header: `${name}, hours from now`, value: hours },
      { header: `${name}, date`, value: date },
    ],
  };
}

/** A chance, in percent on the screen. */
function chance(name: string, value: (margin: MarginRow) => number | null): Quantity {
  return {
    name,
    term: 'chance',
    text: (margin) => formatChance(value(margin)),
    saved: [{ header: `${name}, 0 to 1`, value }],
  };
}

/** Every number of a margin, with its bare values for a saved table. */
export const marginQuantities: readonly Quantity[] = [
  {
    name: 'Source of the limit',
    term: 'limit',
    text: (margin) => margin.limitSource,
    reason: 'not given in the data',
  },
  {
    name: 'Run hours',
    term: 'runHours',
    text: (margin) => formatHours(margin.runHours),
    saved: [{ header: 'Run hours, h', value: (margin) => margin.runHours }],
  },
  {
    name: 'Level ± SD',
    term: 'level',
    text: (margin) => formatLevel(margin.level_mm, margin.levelSd_mm),
    saved: [
      { header: 'Level, mm', value: (margin) => margin.level_mm },
      { header: 'SD of the level, mm', value: (margin) => margin.levelSd_mm },
    ],
  },
  {
    name: 'Slope ± SD',
    text: (margin) => formatRate(margin.slope_mm_per_10kh, margin.slopeSd_mm_per_10kh),
    saved: [
      { header: 'Slope, mm per 10000 h', value: (margin) => margin.slope_mm_per_10kh },
      { header: 'SD of the slope, mm per 10000 h', value: (margin) => margin.slopeSd_mm_per_10kh },
    ],
  },
  {
    name: 'Margin',
    term: 'margin',
    text: (margin) => formatMm(margin.margin_mm, margin.levelSd_mm),
    saved: [{ header: 'Margin, mm', value: (margin) => margin.margin_mm }],
  },
  chance('Chance of being past it now', (margin) => margin.chanceNow),
  point(
    'early',
    'Early, 10 %',
    (margin) => margin.hoursEarly,
    (margin) => margin.dateEarly,
  ),
  point(
    'median',
    'Median, 50 %',
    (margin) => margin.hoursMedian,
    (margin) => margin.dateMedian,
  ),
  point(
    'late',
    'Late, 90 %',
    (margin) => margin.hoursLate,
    (margin) => margin.dateLate,
  ),
  {
    name: 'Next overhaul',
    term: 'overhaul',
    text: (margin) => formatDate(margin.nextOverhaulDate),
    reason: 'no overhaul planned',
    saved: [{ header: 'Next overhaul', value: (margin) => margin.nextOverhaulDate }],
  },
  chance('Chance of being past it then', (margin) => margin.chanceAtNextOverhaul),
  {
    name: 'Expected as found then, 10 / 50 / 90 %',
    text: expectedRange,
    saved: [
      { header: 'Expected as found then, 10 %, mm', value: (margin) => margin.expectedFoundLower_mm },
      { header: 'Expected as found then, 50 %, mm', value: (margin) => margin.expectedFoundMedian_mm },
      { header: 'Expected as found then, 90 %, mm', value: (margin) => margin.expectedFoundUpper_mm },
    ],
  },
  { name: 'Reason or caution', text: marginRemark, reason: 'nothing to remark' },
];
