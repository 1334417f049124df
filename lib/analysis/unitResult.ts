import { group } from 'd3-array';
import { z } from 'zod';
import { lineInterval, ownLine } from '../stats/line/ownLine';
import { theilSen } from '../stats/line/theilSen';
import { levelQuantile } from '../stats/wear/forecast';
import type { Connector } from '../store/Connector';
import { queryRows } from '../store/queryRows';
import { unitHistorySql, unitReadingsSql, unitResetsSql } from '../store/sql/unitRecords';
import { currentLine, type MarginQuestion } from './currentLine';
import { runName } from './groupFits';
import { marginRow } from './marginRow';
import type { Analysis } from './openAnalysis';
import type { BandPoint, HistoryRow, SeriesReading, UnitResult, UnitSeries } from './types';
import { dateAtHours, type UnitNow } from './unitNow';
import { unitPlaces } from './unitPlaces';

const words = z.string().nullable();
const amount = z.number().nullable();
const readingRow = z.object({
  series: z.string(),
  characteristic: z.string(),
  overhaul: z.string(),
  date: z.string(),
  stage: z.enum(['found', 'left']),
  unit_hours: z.number(),
  run_hours: z.number(),
  run: z.number(),
  value_mm: z.number(),
  lower_mm: amount,
  upper_mm: amount,
  workshop: words,
  file: z.string(),
  line: z.number(),
});
const resetRow = z.object({
  characteristic: z.string(),
  unit_hours: z.number(),
  date: z.string(),
  by: z.string(),
});
const historyRow = z.object({
  overhaul: z.string(),
  date: z.string(),
  unit_hours: amount,
  hours_derived: z.number(),
  engine: words,
  bank: words,
  site: words,
  workshop: words,
  kind: words,
  fitted: words,
  remarks: words,
});

/** A reading with the characteristic that its series belongs to. */
type UnitReading = SeriesReading & { readonly characteristic: string };
type ResetRow = z.output<typeof resetRow>;

const bandPoints = 48;
/** The picture looks at least this far past the last reading. */
const leastAhead_h = 4_000;
/** It never looks further ahead than this, however late the late point. */
const mostAhead_h = 30_000;

/** Everything the Unit page shows, or null if the fleet has no such unit. */
export async function unitResult(analysis: Analysis, name: string): Promise<UnitResult | null> {
  const unit = analysis.units.get(name);
  if (unit === undefined) return null;
  const { connector, fleet } = analysis;
  const bySeries = await unitReadings(connector, name, fleet.asOf);
  const resets = await queryRows(connector, unitResetsSql, resetRow, [name, fleet.asOf]);
  const questions = group(analysis.index.questionsOf(unit), (question) => question.series);
  return {
    unit: unit.row,
    asOf: fleet.asOf,
    source: fleet.source,
    series: [...questions.values()].map((asked) =>
      unitSeries(unit, asked, bySeries.get(asked[0]?.series ?? '') ?? [], resets, fleet.asOf),
    ),
    history: await unitHistory(connector, name),
    places: await unitPlaces(connector, name, fleet.asOf),
  };
}

/** Readings of a unit up to a day by series, in order of hours. */
export async function unitReadings(
  connector: Connector,
  unit: string,
  asOf: string,
): Promise<ReadonlyMap<string, readonly UnitReading[]>> {
  const rows = await queryRows(connector, unitReadingsSql, readingRow, [unit, asOf]);
  const readings = rows.map((row) => ({
    series: row.series,
    characteristic: row.characteristic,
    overhaul: row.overhaul,
    date: row.date,
    stage: row.stage,
    unitHours: row.unit_hours,
    runHours: row.run_hours,
    run: runName(unit, row.run),
    value_mm: row.value_mm,
    lower_mm: row.lower_mm,
    upper_mm: row.upper_mm,
    workshop: row.workshop,
    sourceFile: row.file,
    sourceRow: row.line,
  }));
  return new Map(
    [...group(readings, ({ series }) => series)].map(([series, own]) => [
      series,
      own.map(({ series: _, ...reading }) => reading),
    ]),
  );
}

/** Every overhaul of a unit, newest first. */
export async function unitHistory(connector: Connector, unit: string): Promise<readonly HistoryRow[]> {
  const rows = await queryRows(connector, unitHistorySql, historyRow, [unit]);
  return rows.map(({ unit_hours, hours_derived, ...row }) => ({
    ...row,
    unitHours: unit_hours,
    hoursDerived: hours_derived === 1,
  }));
}

function unitSeries(
  unit: UnitNow,
  questions: readonly MarginQuestion[],
  readings: readonly UnitReading[],
  resets: readonly ResetRow[],
  asOf: string,
): UnitSeries {
  const question = questions[0] as MarginQuestion;
  const margins = questions.map(marginRow);
  const own = ownBand(unit, question, readings, asOf);
  const characteristic = readings[0]?.characteristic ?? null;
  return {
    series: question.series,
    readings: readings.map(({ characteristic: _, ...reading }) => reading),
    sisterBand: sisterBand(unit, question, lastHours(unit, margins), asOf),
    ...own,
    resets: resets
      .filter((reset) => reset.characteristic === characteristic)
      .map((reset) => ({ unitHours: reset.unit_hours, date: reset.date, by: reset.by })),
    margins,
    fit: question.fit?.row ?? null,
    nextOverhaulUnitHours: unit.hoursAtNextOverhaul,
  };
}

/** Unit hours at the right end of the picture: past the next overhaul and the late point, within bounds. */
function lastHours(unit: UnitNow, margins: UnitSeries['margins']): number {
  const now = unit.hoursNow ?? 0;
  const late = Math.max(0, ...margins.map((margin) => margin.hoursLate ?? margin.hoursMedian ?? 0)) * 1.1;
  const next = ((unit.hoursAtNextOverhaul ?? now) - now) * 1.15;
  return now + Math.min(mostAhead_h, Math.max(leastAhead_h, late, next));
}

function sisterBand(
  unit: UnitNow,
  question: MarginQuestion,
  end: number,
  asOf: string,
): readonly BandPoint[] {
  const current = currentLine(question);
  if ('reason' in current) return [];
  const start = question.run?.start_hours ?? 0;
  return Array.from({ length: bandPoints + 1 }, (_, index) => {
    const unitHours = start + ((end - start) * index) / bandPoints;
    const x = (unitHours - start) / 10_000;
    return {
      unitHours,
      date: dateAtHours(unitHours, unit.hoursNow, unit.hoursPerYear, asOf),
      lower_mm: levelQuantile(current.line, x, 0.1),
      median_mm: levelQuantile(current.line, x, 0.5),
      upper_mm: levelQuantile(current.line, x, 0.9),
    };
  });
}

/** The unit's own straight line in its current run with its 80 % prediction interval, or why there is none. */
function ownBand(
  unit: UnitNow,
  question: MarginQuestion,
  readings: readonly UnitReading[],
  asOf: string,
): Pick<UnitSeries, 'ownLine' | 'ownLineReason' | 'ownSlope_mm_per_10kh' | 'theilSenSlope_mm_per_10kh'> {
  const now = question.run === null ? null : runName(unit.row.unit, question.run.run);
  const run = readings.filter((reading) => reading.run === now);
  const x = run.map((reading) => reading.runHours / 10_000);
  const y = run.map((reading) => reading.value_mm);
  const line = ownLine(x, y);
  const robust = theilSen(x, y)?.slope ?? null;
  if ('reason' in line) {
    return {
      ownLine: [],
      ownLineReason: line.reason,
      ownSlope_mm_per_10kh: null,
      theilSenSlope_mm_per_10kh: robust,
    };
  }
  const start = question.run?.start_hours ?? 0;
  const end = Math.max(
    unit.hoursAtNextOverhaul ?? 0,
    unit.hoursNow ?? 0,
    start + Math.max(...run.map((reading) => reading.runHours)),
  );
  const points = Array.from({ length: bandPoints + 1 }, (_, index) => {
    const unitHours = start + ((end - start) * index) / bandPoints;
    const interval = lineInterval(line, (unitHours - start) / 10_000, 0.8, 'prediction');
    return {
      unitHours,
      date: dateAtHours(unitHours, unit.hoursNow, unit.hoursPerYear, asOf),
      lower_mm: interval.lower,
      median_mm: interval.fit,
      upper_mm: interval.upper,
    };
  });
  return {
    ownLine: points,
    ownLineReason: null,
    ownSlope_mm_per_10kh: line.slope,
    theilSenSlope_mm_per_10kh: robust,
  };
}
