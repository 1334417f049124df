import { chanceSteps } from './theme';

/** Chance that a limit is met by a date. */
export interface ChancePoint {
  readonly date: string;
  readonly chance: number;
}

/** One unit's strip: its chance by date, what is planned, and the words at its right end. */
export interface FleetStripRow {
  readonly unit: string;
  readonly chanceByDate: readonly ChancePoint[];
  readonly plannedOverhauls: readonly string[];
  readonly ratedLifeDate: string | null;
  /** Short words at the right end (the chance at the next overhaul), and longer ones where there is room. */
  readonly note: string;
  readonly longNote: string;
  /** The whole finding, shown when the strip is pointed at. */
  readonly hint: string;
}

/** First and last date of the picture: today at the left edge. */
export interface TimeWindow {
  readonly from: string;
  readonly to: string;
}

const hatchStrokes = { wide: 72, narrow: 30 };

/**
 * The window from the as-of date to the end of the forecasts, else of the longest plan, else five years on.
 *
 * @param quarters days of the forecasts; empty if there are none
 */
export function fleetWindow(
  asOf: string,
  quarters: readonly string[],
  plannedOverhauls: readonly string[],
): TimeWindow {
  const latest = (dates: readonly string[]) =>
    dates.reduce<string | null>((last, date) => (date > (last ?? asOf) ? date : last), null);
  const fiveYearsOn = `${Number(asOf.slice(0, 4)) + 5}${asOf.slice(4)}`;
  return { from: asOf, to: latest(quarters) ?? latest(plannedOverhauls) ?? fiveYearsOn };
}

interface Segment {
  readonly unit: string;
  readonly from: number;
  readonly to: number;
  readonly chance: number;
}

function stepOf(chance: number): number {
  return chanceSteps.filter((step) => chance >= step).length;
}

/** Stretches of one ink from today on, by the chance at the end of each quarter; none past the end of the rated life. */
function segmentsOf(row: FleetStripRow, window: TimeWindow): readonly Segment[] {
  const segments: Segment[] = [];
  let from = window.from;
  for (const point of row.chanceByDate) {
    const [to = point.date] = [point.date, row.ratedLifeDate ?? point.date].sort();
    if (to <= from) continue;
    const last = segments.at(-1);
    const next = {
      unit: row.unit,
      from: Date.parse(from),
      to: Date.parse(to),
      chance: point.chance,
    };
    if (last !== undefined && stepOf(last.chance) === stepOf(point.chance)) {
      segments[segments.length - 1] = { ...next, from: last.from };
    } else {
      segments.push(next);
    }
    from = to;
  }
  return segments;
}

/** Strokes of hatching over the part of the window in which the unit has no forecast. */
function hatchesOf(row: FleetStripRow, window: TimeWindow, strokes: number) {
  const start = Date.parse(window.from);
  const step = (Date.parse(window.to) - start) / strokes;
  const covered = Math.max(start, ...segmentsOf(row, window).map((segment) => segment.to));
  return Array.from({ length: strokes }, (_, stroke) => start + (stroke + 0.5) * step)
    .filter((time) => time > covered)
    .map((time) => ({ unit: row.unit, time }));
}

/** The named data sets that fleetStrip draws; times in milliseconds since 1970, UTC. */
export function fleetStripData(rows: readonly FleetStripRow[], window: TimeWindow, narrow: boolean) {
  const inWindow = (date: string) => date >= window.from && date <= window.to;
  const marked = (unit: string, dates: readonly string[]) =>
    dates.filter(inWindow).map((date) => ({ unit, time: Date.parse(date) }));
  return {
    window: [{ from: Date.parse(window.from), to: Date.parse(window.to) }],
    rows: rows.map((row) => ({
      unit: row.unit,
      pick: `#${encodeURIComponent(row.unit)}`,
      note: narrow ? row.note : row.longNote,
      hint: row.hint,
    })),
    segments: rows.flatMap((row) => segmentsOf(row, window)),
    hatches: rows.flatMap((row) => hatchesOf(row, window, narrow ? hatchStrokes.narrow : hatchStrokes.wide)),
    overhauls: rows.flatMap((row) => marked(row.unit, row.plannedOverhauls)),
    lives: rows.flatMap((row) => marked(row.unit, row.ratedLifeDate === null ? [] : [row.ratedLifeDate])),
  };
}
