import { crossings } from '../stats/wear/crossing';
import { chancePast, levelAt, readingQuantile, slopeOf } from '../stats/wear/forecast';
import type { LineMixture } from '../stats/wear/types';
import { currentLine, type MarginQuestion } from './currentLine';
import type { MarginRow } from './types';
import { dateAtHours } from './unitNow';

/** Forecasts further ahead than this are 'beyond'. */
export const furthestForecast_h = 100_000;
/** Above this chance a level counts as past its limit now. */
const chanceOfPast = 0.9;

/**
 * Margin of one unit, series and limit on the day: level, early / median / late, chance at the next overhaul and the
 * reading expected then; capped by the rated life. Without a limit there is a level and no verdict.
 */
export function marginRow(question: MarginQuestion): MarginRow {
  const { unit, limit } = question;
  const current = currentLine(question);
  if ('reason' in current) return { ...emptyMargin(question), reason: current.reason };
  const { line, runHours } = current;
  const xNow = runHours / 10_000;
  const level = levelAt(line, xNow);
  const slope = slopeOf(line);
  const base: MarginRow = {
    ...emptyMargin(question),
    runHours,
    level_mm: level.mean,
    levelSd_mm: level.sd,
    slope_mm_per_10kh: slope.mean,
    slopeSd_mm_per_10kh: slope.sd,
    ...expectedReading(question, line, runHours),
  };
  if (limit === null)
    return { ...base, reason: 'no limit in limits.csv for this frame and series: no verdict' };
  const chance = (x: number) => chancePast(line, limit.limit_mm, limit.limit_kind, x);
  const chanceNow = chance(xNow);
  const ahead = (unit.hoursAtNextOverhaul ?? 0) - (unit.hoursNow ?? 0);
  const canDate = unit.hoursPerYear !== null;
  return {
    ...base,
    margin_mm: limit.limit_kind === 'upper' ? limit.limit_mm - level.mean : level.mean - limit.limit_mm,
    chanceNow,
    chanceAtNextOverhaul: unit.hoursAtNextOverhaul === null ? null : chance(xNow + ahead / 10_000),
    ...timeToLimit(question, line, runHours, chanceNow),
    chanceByQuarter: canDate
      ? question.quarters.map(({ years }) => chance(xNow + (years * (unit.hoursPerYear ?? 0)) / 10_000))
      : [],
  };
}

function emptyMargin({ unit, series, limit }: MarginQuestion): MarginRow {
  return {
    unit: unit.row.unit,
    group: unit.row.group,
    series,
    limitKind: limit?.limit_kind ?? null,
    limit_mm: limit?.limit_mm ?? null,
    limitSource: limit?.source ?? null,
    runHours: null,
    level_mm: null,
    levelSd_mm: null,
    slope_mm_per_10kh: null,
    slopeSd_mm_per_10kh: null,
    margin_mm: null,
    hoursEarly: null,
    hoursMedian: null,
    hoursLate: null,
    dateEarly: null,
    dateMedian: null,
    dateLate: null,
    chanceNow: null,
    nextOverhaulDate: unit.row.nextOverhaulDate,
    chanceAtNextOverhaul: null,
    expectedFoundLower_mm: null,
    expectedFoundMedian_mm: null,
    expectedFoundUpper_mm: null,
    cappedByRatedLife: false,
    extrapolated: false,
    reason: null,
    chanceByQuarter: [],
  };
}

function expectedReading({ unit }: MarginQuestion, line: LineMixture, runHours: number): Partial<MarginRow> {
  if (unit.hoursAtNextOverhaul === null || unit.hoursNow === null) return {};
  const x = (runHours + unit.hoursAtNextOverhaul - unit.hoursNow) / 10_000;
  return {
    expectedFoundLower_mm: readingQuantile(line, x, 0.1),
    expectedFoundMedian_mm: readingQuantile(line, x, 0.5),
    expectedFoundUpper_mm: readingQuantile(line, x, 0.9),
  };
}

/** Hours from now and dates at which the chance is 10, 50 and 90 %, no later than the end of the rated life. */
function timeToLimit(
  { unit, fit, limit, asOf }: MarginQuestion,
  line: LineMixture,
  runHours: number,
  chanceNow: number,
): Partial<MarginRow> {
  if (limit === null) return {};
  const from = runHours / 10_000;
  const past = chanceNow > chanceOfPast;
  const found = past
    ? [from, from, from]
    : crossings(
        line,
        limit.limit_mm,
        limit.limit_kind,
        [0.1, 0.5, 0.9],
        from,
        from + furthestForecast_h / 10_000,
      );
  const lifeLeft =
    unit.ratedLife_h === null || unit.hoursNow === null
      ? null
      : Math.max(0, unit.ratedLife_h - unit.hoursNow);
  const uncapped = found.map((x) => (x === null ? null : (x - from) * 10_000));
  const hours = uncapped
    .map((value) => (lifeLeft === null ? value : Math.min(value ?? lifeLeft, lifeLeft)))
    .map((value) => (value !== null && value > furthestForecast_h ? null : value));
  const capped = hours.some((value, index) => value !== uncapped[index]);
  const dates = hours.map((value) =>
    value === null ? null : dateAtHours((unit.hoursNow ?? 0) + value, unit.hoursNow, unit.hoursPerYear, asOf),
  );
  const [hoursEarly = null, hoursMedian = null, hoursLate = null] = hours;
  const [dateEarly = null, dateMedian = null, dateLate = null] = dates;
  const seen = fit?.row.observedRunHours ?? null;
  return {
    hoursEarly,
    hoursMedian,
    hoursLate,
    dateEarly,
    dateMedian,
    dateLate,
    cappedByRatedLife: capped,
    extrapolated: seen !== null && (hoursLate === null || runHours + hoursLate > seen),
    reason: past ? 'past limit' : lifeLeft === 0 ? 'rated life reached' : null,
  };
}
