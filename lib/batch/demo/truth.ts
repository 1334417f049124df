import { isoOf } from './days';
import { demoSeed } from './draws';
import type { FaultyRow } from './faults';
import { currentStays, lastDay } from './fleetTables';
import { type Fleet, unitHoursAt } from './installations';
import { oddities } from './oddityTexts';
import type { OverhaulEntry } from './records';
import { fourClocks, frameTruth, type TrueRun, trueLevel, visitAt } from './trueRuns';
import type { UnitHistory } from './unitHistory';
import { type WearTruth, wearTruths } from './wearTruth';

/** What the generator knows and the analysis must find: the content of truth.json. */
export function truthOf(
  fleet: Fleet,
  histories: readonly UnitHistory[],
  overhauls: readonly OverhaulEntry[],
  typed: readonly (readonly FaultyRow[])[],
) {
  const { Kestrel: _, ...frames } = wearTruths;
  return {
    note: 'Synthetic. Lengths in mm, rates in mm per 10,000 h of run, hours in h. Level at x = run hours / 10,000 is start + rate x.',
    seed: demoSeed,
    last_day: isoOf(lastDay(fleet)),
    frames,
    odd: oddities(histories),
    held: { rows: typed.flat().filter(({ fault }) => fault !== null).length, list: typed.flatMap(heldRows) },
    derived_unit_hours: overhauls
      .filter(({ row }) => row.unit_hours === '')
      .map(({ row, visit }) => ({
        overhaul: row.overhaul,
        unit: visit.unit,
        unit_hours: visit.unitHours,
      })),
    units: histories.map((history) => unitTruth(fleet, history)),
  };
}

function heldRows(rows: readonly FaultyRow[]) {
  return rows.flatMap(({ row, fault }, index) =>
    fault === null
      ? []
      : [
          {
            ...fault,
            line: index + 2,
            overhaul: row.overhaul,
            raw: fault.column === '' ? '' : row[fault.column],
          },
        ],
  );
}

function unitTruth(fleet: Fleet, history: UnitHistory) {
  const stay = currentStays(fleet).find(({ unit }) => unit === history.unit);
  const hoursNow = stay === undefined ? null : unitHoursAt(stay, lastDay(fleet));
  const codes = [...new Set(history.runs.map(({ code }) => code))];
  return {
    unit: history.unit,
    frame: visitAt(history.visits, 0).frame,
    engine: stay?.engine.engine ?? null,
    bank: stay?.bank ?? null,
    hours_now: hoursNow,
    series: codes.flatMap((code) => {
      const run = history.runs.filter((candidate) => candidate.code === code).at(-1);
      if (run === undefined) return [];
      const truth = frameTruth(code, visitAt(history.visits, 0));
      return seriesOf(run, truth).map(({ series, level, sdNoise }) => ({
        series,
        run_started_on: isoOf(visitAt(history.visits, run.fromVisit).day),
        run_started_unit_hours: run.fromUnitHours,
        start_mm: rounded(level(run.fromUnitHours)),
        rate_mm_per_10kh: rounded(level(run.fromUnitHours + 10_000) - level(run.fromUnitHours)),
        sd_noise_mm: rounded(sdNoise),
        rounding_mm: truth.step,
        level_now_mm: hoursNow === null ? null : rounded(level(hoursNow)),
      }));
    }),
  };
}

/** Series of a run, free of noise: the same for a single reading; largest, smallest, mean and offset for four clock positions. */
function seriesOf(run: TrueRun, { vertical, sdNoise }: WearTruth) {
  if (vertical === undefined)
    return [{ series: run.code as string, level: (hours: number) => trueLevel(run, hours, ''), sdNoise }];
  const at = (hours: number) => fourClocks.map((clock) => trueLevel(run, hours, clock));
  const halfDifference = (a: string, b: string) => ((run.shape_mm[a] ?? 0) - (run.shape_mm[b] ?? 0)) / 2;
  const offset = Math.hypot(halfDifference('12', '6'), halfDifference('3', '9'));
  return [
    { series: `${run.code}_largest`, level: (hours: number) => Math.max(...at(hours)), sdNoise },
    { series: `${run.code}_smallest`, level: (hours: number) => Math.min(...at(hours)), sdNoise },
    {
      series: `${run.code}_mean`,
      level: (hours: number) => at(hours).reduce((sum, value) => sum + value, 0) / 4,
      sdNoise: sdNoise / 2,
    },
    { series: `${run.code}_offset`, level: () => offset, sdNoise: sdNoise / Math.SQRT2 },
  ];
}

function rounded(value: number): number {
  return Number(value.toFixed(6));
}
