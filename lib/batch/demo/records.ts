import type { TextRow } from './csvText';
import { isoOf, yearOf } from './days';
import type { Visit } from './installations';
import { meterReading } from './meters';
import {
  engineHoursOnly,
  feelerReadings,
  feelerStep_mm,
  missingAsLeft,
  missingClock,
  move,
  names,
} from './oddities';
import { remarkOf } from './remarks';
import type { GaugeReading } from './simulate';
import { frameTruth, visitAt } from './trueRuns';
import type { UnitHistory } from './unitHistory';
import type { CharacteristicCode } from './wearTruth';

/** A row of overhauls.csv with what it was made from. */
export interface OverhaulEntry {
  readonly visit: Visit;
  readonly index: number;
  readonly row: TextRow;
}

/** A row of readings.csv with what it was made from. */
export interface ReadingEntry {
  readonly unit: string;
  readonly reading: GaugeReading;
  readonly row: TextRow;
}

/** Rows of overhauls.csv and readings.csv without any typing fault, in order of date and unit. */
export function recordsOf(histories: readonly UnitHistory[]) {
  const all = histories.flatMap((history) =>
    history.visits.map((visit, index) => ({ history, visit, index })),
  );
  all.sort((a, b) => a.visit.day - b.visit.day || a.visit.unit.localeCompare(b.visit.unit));
  const rowsInFile = new Map<string, number>();
  const overhauls: OverhaulEntry[] = [];
  const readings: ReadingEntry[] = [];
  all.forEach(({ history, visit, index }, position) => {
    const overhaul = `OH-${String(position + 1).padStart(4, '0')}`;
    const file = sourceFile(visit);
    const line = (rowsInFile.get(file) ?? 1) + 1;
    rowsInFile.set(file, line);
    overhauls.push({ visit, index, row: overhaulRow(overhaul, history, index) });
    for (const reading of history.readings) {
      if (reading.visit !== index || isMissing(visit.unit, reading)) continue;
      const row = { ...readingRow(overhaul, visit, reading), source_file: file, source_row: String(line) };
      readings.push({ unit: visit.unit, reading, row });
    }
  });
  return { overhauls, readings };
}

function sourceFile({ unit, opening, engine, day }: Visit): string {
  if (opening === null) return `delivery-${unit.toLowerCase()}.csv`;
  return `${engine.site.toLowerCase().replaceAll(' ', '-')}-${yearOf(day)}.csv`;
}

function overhaulRow(overhaul: string, history: UnitHistory, index: number): TextRow {
  const visit = visitAt(history.visits, index);
  const { unit, unitHours, engine, opening, day } = visit;
  const meterOnly = names(engineHoursOnly, unit, index);
  // Every fourth sheet leaves the engine's meter out; a delivered unit has no engine yet.
  const withMeter = meterOnly || (opening !== null && (day + index) % 4 !== 0);
  return {
    overhaul,
    unit,
    date: isoOf(day),
    unit_hours: meterOnly ? '' : String(unitHours),
    engine_hours: withMeter ? String(meterReading(engine, day)) : '',
    site: engine.site,
    engine: engine.engine,
    bank: visit.bank,
    workshop: opening?.workshop ?? '',
    kind: opening?.kind ?? 'planned',
    fitted: (history.fitted[index] ?? []).join(';'),
    remarks: remarkOf(history.visits, index),
  };
}

function isMissing(unit: string, { visit, code, stage, clock }: GaugeReading): boolean {
  const left = missingAsLeft.some(
    ([u, v, c]) => u === unit && v === visit && (c === undefined || c === code),
  );
  return (
    (stage === 'left' && left) ||
    missingClock.some(([u, v, c, at]) => u === unit && v === visit && c === code && at === clock)
  );
}

export type Uom = 'mm' | 'um' | 'mil' | '0.01mm';

/** Workshops write in their own units of measure; the maker of the one exchange unit wrote in mil. */
function uomOf(visit: Visit, code: CharacteristicCode): Uom {
  if (visit.opening === null) return visit.unit === move.replacedBy ? 'mil' : 'mm';
  if (visit.opening.workshop === 'Dunlin Service' && code === 'runout') return 'um';
  return visit.opening.workshop === 'Kittiwake Yard' && code === 'thrust_play' ? '0.01mm' : 'mm';
}

function readingRow(overhaul: string, visit: Visit, reading: GaugeReading): TextRow {
  const { code, stage, clock, value_mm } = reading;
  const uom = uomOf(visit, code);
  const step = frameTruth(code, visit).step;
  const row = { overhaul, characteristic: code, stage, clock, value: '', uom, lower: '', upper: '' };
  if (
    !feelerReadings.some(([unit, at, felt]) => unit === visit.unit && at === reading.visit && felt === code)
  ) {
    return { ...row, value: written(value_mm, uom, step) };
  }
  const leaves = Math.floor(value_mm / feelerStep_mm);
  const end = (count: number) => written(count * feelerStep_mm, uom, step);
  return { ...row, lower: end(leaves), upper: end(leaves + 1) };
}

/** The number as the workshop writes it, rounded to the gauge's step. */
export function written(value_mm: number, uom: Uom, step_mm: number): string {
  const rounded_mm = Math.round(value_mm / step_mm) * step_mm;
  switch (uom) {
    case 'mm':
      return rounded_mm.toFixed(step_mm < 0.01 ? 3 : 2);
    case 'um':
      return (rounded_mm * 1000).toFixed(0);
    case '0.01mm':
      return (rounded_mm * 100).toFixed(0);
    case 'mil':
      return (value_mm / 0.0254).toFixed(1);
  }
}
