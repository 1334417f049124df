import type { MarginRow, UnitRow } from '../../lib/analysis/types';
import {
  forecastReach,
  formatChance,
  formatDate,
  formatLength,
  formatLevel,
  formatMm,
  formatRate,
} from '../../lib/charts/format';
import { isPast, marginCautions, noForecastSentence, pointWords } from './marginWords';
import { midSentence } from './seriesName';

/** What the level does: 'rises by 0.081 ± 0.012 mm per 10 000 h'. */
function movement(margin: MarginRow): string {
  const slope = margin.slope_mm_per_10kh;
  if (slope === null) return '';
  const verb = slope < 0 ? 'falls' : 'rises';
  return ` and ${verb} by ${formatRate(Math.abs(slope), margin.slopeSd_mm_per_10kh)}`;
}

function limitWords(margin: MarginRow): string {
  return `the ${margin.limitKind ?? 'upper'} limit of ${formatMm(margin.limit_mm)}`;
}

function metWords(margin: MarginRow): string {
  if (isPast(margin)) {
    return `It is past ${limitWords(margin)} with a chance of ${formatChance(margin.chanceNow)}.`;
  }
  if (margin.hoursEarly === null && margin.hoursMedian === null && margin.hoursLate === null) {
    return `It does not meet ${limitWords(margin)} within ${forecastReach()} with a chance of 10 % or more.`;
  }
  if (margin.cappedByRatedLife && margin.hoursEarly === margin.hoursLate) {
    return `The rated life ends first, ${pointWords(margin.hoursLate, margin.dateLate)}: by then it meets ${limitWords(margin)} with a chance of under 10 %.`;
  }
  const points = [
    `early ${pointWords(margin.hoursEarly, margin.dateEarly)}`,
    `median ${pointWords(margin.hoursMedian, margin.dateMedian)}`,
    `late ${pointWords(margin.hoursLate, margin.dateLate)}`,
  ];
  return `It meets ${limitWords(margin)}: ${points.join(', ')}.`;
}

function overhaulWords(margin: MarginRow): string {
  if (margin.nextOverhaulDate === null)
    return 'No overhaul is planned, so there is no chance at the next one.';
  const date = formatDate(margin.nextOverhaulDate);
  if (margin.chanceAtNextOverhaul === null) return `At the overhaul of ${date} no chance can be given.`;
  return `At the next planned overhaul, ${date}, the chance of being past it is ${formatChance(margin.chanceAtNextOverhaul)}.`;
}

/** What one margin says, in sentences: level and movement, the limit early, median and late, and the next overhaul. */
export function marginSentences(unit: string, name: string, margin: MarginRow): readonly string[] {
  const level =
    margin.level_mm === null
      ? `The level of ${midSentence(name)} of ${unit} is not known.`
      : `${name} of ${unit} is ${formatLevel(margin.level_mm, margin.levelSd_mm)} now${movement(margin)}.`;
  if (margin.limit_mm === null) return [level, 'No limit is known for it, so there is no verdict.'];
  const none = noForecastSentence(margin);
  if (none !== null) return [level, none];
  // That the level is past its limit has been said in words.
  const cautions = marginCautions(isPast(margin) ? { ...margin, reason: null } : margin);
  return [level, metWords(margin), overhaulWords(margin), ...cautions];
}

/** The range in which the reading as found at the next overhaul is expected, or null if there is none. */
export function expectedSentence(margin: MarginRow): string | null {
  const {
    expectedFoundLower_mm: lower,
    expectedFoundMedian_mm: median,
    expectedFoundUpper_mm: upper,
  } = margin;
  if (lower === null || median === null || upper === null) return null;
  return `The reading as found at the next overhaul is expected between ${formatLength(lower)} and ${formatMm(upper)} (10 to 90 %), median ${formatMm(median)}.`;
}

/** The answer of the Unit page: what the deciding series says, or why nothing can be said. */
export function unitSentences(
  unit: UnitRow,
  name: string | null,
  deciding: MarginRow | null,
): readonly string[] {
  if (name === null || deciding === null) {
    return [
      `No limit is known for any series of ${unit.unit}, so there is no verdict: add limits on the Tables page, or limits.csv on the Records page.`,
    ];
  }
  return marginSentences(unit.unit, name, deciding);
}
