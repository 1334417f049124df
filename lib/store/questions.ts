import { z } from 'zod';
import type { Connector } from './Connector';
import { queryColumns } from './queryColumns';
import { queryRows } from './queryRows';
import { firstDateSql, heldByUnitSql } from './sql/heldByUnit';
import { partsInStockSql, seriesResetsSql } from './sql/planning';
import {
  assemblyRangesSql,
  latestDateSql,
  limitsInForceSql,
  resetRuleOfSeriesSql,
  runsNowSql,
  unitPositionsSql,
  unitsOpenedAfterSql,
} from './sql/positions';

const words = z.string().nullable();
const amount = z.number().nullable();

const unitPosition = z.object({
  unit: z.string(),
  frame: z.string(),
  rated_life_h: amount,
  installed: z.number(),
  site: words,
  engine: words,
  bank: words,
  overhauls: z.number(),
  last_date: words,
  last_workshop: words,
  last_hours: amount,
  observed_hours_per_year: amount,
  hours_per_year: amount,
  plan_hours: amount,
  plan_date: words,
  next_overhaul_date: words,
  interval_h: amount,
});
const limitInForce = z.object({
  frame: z.string(),
  series: z.string(),
  limit_kind: z.enum(['upper', 'lower']),
  limit_mm: z.number(),
  source: words,
});
const assemblyRange = z.object({
  frame: z.string(),
  series: z.string(),
  assembly_lower: amount,
  assembly_upper: amount,
});
const ruleOfSeries = z.object({ frame: z.string(), series: z.string(), rule: z.number() });
const partInStock = z.object({
  part: z.string(),
  frame: z.string(),
  name: words,
  resets: words,
  per_unit: amount,
  lead_time_weeks: amount,
  unit_cost: amount,
  currency: words,
  on_hand: amount,
  on_order: amount,
  due: words,
});
const heldOfUnit = z.object({
  unit: words,
  held: z.number(),
  reasons: z.number(),
  reason: z.string(),
});
const seriesReset = z.object({
  frame: z.string(),
  series: z.string(),
  characteristic: z.string(),
  codes: words,
});

export type UnitPosition = z.output<typeof unitPosition>;
export type LimitInForce = z.output<typeof limitInForce>;
export type AssemblyRange = z.output<typeof assemblyRange>;
/** The run that a unit is in: its number, 0 for the one from new, and the unit hours at its start, -1 where not known. */
export interface RunNow {
  readonly run: number;
  readonly start_hours: number;
}
/** Finds the run that a unit of a frame is in by one of its series; null where no overhaul of the unit is on record. */
export type RunOf = (unit: string, frame: string, series: string) => RunNow | null;
export type PartInStock = z.output<typeof partInStock>;
export type HeldOfUnit = z.output<typeof heldOfUnit>;
export type SeriesReset = z.output<typeof seriesReset>;

/** Where every unit sits on the day, with its plan and last overhaul, in order of unit. */
export function unitPositions(connector: Connector, asOf: string): Promise<readonly UnitPosition[]> {
  return queryRows(connector, unitPositionsSql, unitPosition, [asOf]);
}

/** Units that were opened after the day. */
export async function unitsOpenedAfter(connector: Connector, asOf: string): Promise<ReadonlySet<string>> {
  const rows = await queryRows(connector, unitsOpenedAfterSql, z.object({ unit: z.string() }), [asOf]);
  return new Set(rows.map(({ unit }) => unit));
}

/** Limits in force on the day. */
export function limitsInForce(connector: Connector, asOf: string): Promise<readonly LimitInForce[]> {
  return queryRows(connector, limitsInForceSql, limitInForce, [asOf]);
}

/** What readings as left must lie within on the day, mm, by frame and series. */
export function assemblyRanges(connector: Connector, asOf: string): Promise<readonly AssemblyRange[]> {
  return queryRows(connector, assemblyRangesSql, assemblyRange, [asOf]);
}

/** The run that every unit is in on the day. */
export async function runsNow(connector: Connector, asOf: string): Promise<RunOf> {
  const kinds = { unit: 'text', rule: 'number', run: 'number', start_hours: 'number' } as const;
  const runs = await queryColumns(connector, runsNowSql, kinds, [asOf]);
  const rules = await queryRows(connector, resetRuleOfSeriesSql, ruleOfSeries);
  const key = (one: string, other: string | number) => `${one}\u0000${other}`;
  const ruleOf = new Map(rules.map(({ frame, series, rule }) => [key(frame, series), rule]));
  const placeOf = new Map(runs.unit.map((unit, place) => [key(unit, runs.rule[place] as number), place]));
  return (unit, frame, series) => {
    const rule = ruleOf.get(key(frame, series));
    const place = rule === undefined ? undefined : placeOf.get(key(unit, rule));
    if (place === undefined) return null;
    return { run: runs.run[place] as number, start_hours: runs.start_hours[place] as number };
  };
}

/** Latest date in the data, or null if it holds none. */
export async function latestDate(connector: Connector): Promise<string | null> {
  const [row] = await queryRows(connector, latestDateSql, z.object({ day: words }));
  return row?.day ?? null;
}

/** First day with an overhaul on record, or null if there is none. */
export async function firstDate(connector: Connector): Promise<string | null> {
  const [row] = await queryRows(connector, firstDateSql, z.object({ day: words }));
  return row?.day ?? null;
}

/** Held rows and cells of every unit that has any, in order of unit; those of no known unit at the end. */
export function heldByUnit(connector: Connector): Promise<readonly HeldOfUnit[]> {
  return queryRows(connector, heldByUnitSql, heldOfUnit);
}

/** Parts with their stock, one row a part and frame. */
export function partsInStock(connector: Connector): Promise<readonly PartInStock[]> {
  return queryRows(connector, partsInStockSql, partInStock);
}

/** What starts a new run of each series of a frame. */
export function seriesResets(connector: Connector): Promise<readonly SeriesReset[]> {
  return queryRows(connector, seriesResetsSql, seriesReset);
}
