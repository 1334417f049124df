import { group } from 'd3-array';
import { z } from 'zod';
import { builtInCharacteristics } from '../../records/characteristics';
import { type ClockForecast, clockForecast, type KnownSet } from '../../stats/benchCheck/clockForecast';
import { queryRows } from '../../store/queryRows';
import { assemblyRanges, seriesResets } from '../../store/questions';
import {
  characteristicsSql,
  groupClockSetsSql,
  unitReadingsTakenSql,
  usualSizesSql,
  workshopsSql,
} from '../../store/sql/benchRecords';
import { characteristicOf } from '../combineChances';
import type { MarginQuestion } from '../currentLine';
import { runName } from '../groupFits';
import type { Analysis } from '../openAnalysis';
import { codesOf } from '../plan/partStocks';
import type { Planning, PlanningUnit } from '../plan/planning';
import type { GaugeRepeatability } from '../repeatability/gaugeRepeatability';
import type { HistoryRow, SeriesReading } from '../types';
import type { UnitNow } from '../unitNow';
import { unitHistory, unitReadings } from '../unitResult';
import { clocks } from './boxes';
import { type Gauge, gaugeOf } from './gaugeOf';
import type { SeriesBounds } from './seriesChecks';

/** One characteristic of a unit with everything that its sheet and its checks are made from. */
export interface ItemBench {
  readonly characteristic: string;
  readonly shape: 'single' | 'four_clock';
  readonly neverNegative: boolean;
  /** Parts that start a new run; empty: every assembly does. */
  readonly resetParts: readonly string[];
  /** One question a series, whatever its limits. */
  readonly questions: ReadonlyMap<string, MarginQuestion>;
  readonly bounds: readonly SeriesBounds[];
  readonly gauge: Gauge | null;
  /** How clock readings lie about their mean in the run that the unit is in, and in a new one. */
  readonly clock: { readonly now: ClockForecast | null; readonly renewed: ClockForecast | null };
  readonly usual_mm: number | null;
  /** What was left last time by clock position ('' for a single reading), and when. */
  readonly lastLeft: { readonly date: string; readonly values_mm: ReadonlyMap<string, number> } | null;
}

/** A unit on the bench: what does not depend on the hours at the overhaul. */
export interface UnitBench {
  readonly unit: UnitNow;
  readonly items: readonly ItemBench[];
  readonly planning: PlanningUnit | null;
  readonly parts: Planning['parts'];
  /** Readings on record by series, in order of hours. */
  readonly readings: ReadonlyMap<string, readonly SeriesReading[]>;
  /** Overhauls on record, newest first. */
  readonly history: readonly HistoryRow[];
  readonly workshops: readonly string[];
}

const takenRow = z.object({
  characteristic: z.string(),
  stage: z.enum(['found', 'left']),
  clock: z.string().nullable(),
  overhaul: z.string(),
  date: z.string(),
  value_mm: z.number(),
});
const setRow = z.object({
  characteristic: z.string(),
  unit: z.string(),
  run: z.number(),
  stage: z.string(),
  c12: z.number(),
  c3: z.number(),
  c6: z.number(),
  c9: z.number(),
});
const usualRow = z.object({ characteristic: z.string(), usual_mm: z.number() });
const shapeRow = z.object({
  code: z.string(),
  shape: z.enum(['single', 'four_clock']),
  never_negative: z.number(),
});

/** What is looked for at an overhaul where neither limits nor readings say it. */
const usualItems = ['thrust_play', 'runout', 'tip_compressor', 'tip_turbine'];

/** Gathers what the sheet and the checks of one unit are made from; null if the fleet has no such unit. */
export async function unitBench(
  analysis: Analysis,
  name: string,
  planning: Planning,
  repeatabilities: readonly GaugeRepeatability[],
): Promise<UnitBench | null> {
  const unit = analysis.units.get(name);
  if (unit === undefined) return null;
  const { connector, fleet, index, groupTable } = analysis;
  const { frame, group: sisters } = unit.row;
  const taken = await queryRows(connector, unitReadingsTakenSql, takenRow, [name, fleet.asOf]);
  const sets = await queryRows(connector, groupClockSetsSql(groupTable), setRow, [fleet.asOf, sisters]);
  const usual = await queryRows(connector, usualSizesSql, usualRow, [frame]);
  const shapes = await queryRows(connector, characteristicsSql, shapeRow);
  const workshops = await queryRows(connector, workshopsSql, z.object({ workshop: z.string() }));
  const ranges = (await assemblyRanges(connector, fleet.asOf)).filter((range) => range.frame === frame);
  const rules = (await seriesResets(connector)).filter((rule) => rule.frame === frame);
  const bySeries = group(index.questionsOf(unit), ({ series }) => series);
  const codes = shapes.map(({ code }) => code);
  const known = new Set([...bySeries.keys()].map((series) => characteristicOf(series, codes)));
  const items = shapes
    .filter(({ code }) => (known.size === 0 ? usualItems.includes(code) : known.has(code)))
    .sort((a, b) => place(a.code) - place(b.code))
    .map((shape): ItemBench => {
      const { code } = shape;
      const own = [...bySeries].filter(([series]) => characteristicOf(series, codes) === code);
      const questions = new Map(
        own.flatMap(([series, [first]]) => (first ? [[series, first] as const] : [])),
      );
      const ownSets = sets.filter(({ characteristic }) => characteristic === code).map(knownSet);
      const run = questions.values().next().value?.run ?? null;
      return {
        characteristic: code,
        shape: shape.shape,
        neverNegative: shape.never_negative === 1,
        resetParts: resetParts(rules.find(({ characteristic }) => characteristic === code)?.codes ?? null),
        questions,
        bounds: own.map(([series, asked]) => ({
          series,
          limits: asked.flatMap(({ limit }) =>
            limit === null
              ? []
              : [{ kind: limit.limit_kind, limit_mm: limit.limit_mm, source: limit.source }],
          ),
          assembly: rangeOf(ranges.find((range) => range.series === series)),
        })),
        gauge: gaugeOf(code, shape.shape, questions, repeatabilities, ownSets),
        clock: {
          now: clockForecast(ownSets, name, run === null ? null : runName(name, run.run)),
          renewed: clockForecast(ownSets, name, null),
        },
        usual_mm: usual.find(({ characteristic }) => characteristic === code)?.usual_mm ?? null,
        lastLeft: lastLeft(taken.filter((row) => row.characteristic === code && row.stage === 'left')),
      };
    });
  return {
    unit,
    items,
    planning: planning.units.find(({ plan }) => plan.unit.row.unit === name) ?? null,
    parts: planning.parts,
    readings: await unitReadings(connector, name, fleet.asOf),
    history: await unitHistory(connector, name),
    workshops: workshops.map(({ workshop }) => workshop),
  };
}

/** The usual order of a sheet; what users add comes last. */
function place(code: string): number {
  const index = builtInCharacteristics.findIndex((one) => one.code === code);
  return index < 0 ? builtInCharacteristics.length : index;
}

/** Part codes that start a new run; none where every assembly does. */
function resetParts(codes: string | null): readonly string[] {
  const named = codesOf(codes);
  return named.includes('assembly') ? [] : named;
}

function rangeOf(
  range: { readonly assembly_lower: number | null; readonly assembly_upper: number | null } | undefined,
): SeriesBounds['assembly'] {
  return range === undefined ? null : { lower_mm: range.assembly_lower, upper_mm: range.assembly_upper };
}

function knownSet({ unit, run, c12, c3, c6, c9 }: z.output<typeof setRow>): KnownSet {
  return { unit, run: runName(unit, run), readings_mm: [c12, c3, c6, c9] };
}

function lastLeft(rows: readonly z.output<typeof takenRow>[]): ItemBench['lastLeft'] {
  const last = rows.at(-1);
  if (last === undefined) return null;
  const own = rows.filter(({ overhaul }) => overhaul === last.overhaul);
  const order = ['', ...clocks];
  const values = own
    .map(({ clock, value_mm }) => [clock ?? '', value_mm] as const)
    .sort(([a], [b]) => order.indexOf(a) - order.indexOf(b));
  return { date: last.date, values_mm: new Map(values) };
}
