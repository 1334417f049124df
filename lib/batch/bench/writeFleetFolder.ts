import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { daysBetween, isoDatePlus } from '../../analysis/isoDate';
import { drawsFor } from '../demo/draws';
import { TextFile } from '../TextFile';
import { engineOf, overhaulLine, overhaulsHeader, readingLines, readingsHeader } from './canonicalLines';
import { groupTruth, measured } from './groupTruth';
import { type MadeOverhaul, madeUnit } from './madeUnit';

/** A fleet to be made. */
export interface MadeFleet {
  readonly units: number;
  readonly unitsPerGroup: number;
  /** A folder a sister group instead of one file a table for the whole fleet. */
  readonly partitioned: boolean;
}

/** Day for which the plan states the hours. */
export const planDay = '2026-06-30';
const hoursPerYear = 7300;
const interval_h = 8000;

const limitsHeader = 'frame,series,limit_kind,limit,assembly_lower,assembly_upper,reset_by,source,valid_from';
const partsHeader = 'part,name,frame,resets,per_unit,lead_time_weeks,unit_cost,currency,on_hand,on_order,due';
const unitTables = {
  units: 'unit,frame,made_on,rated_life_h',
  overhauls: overhaulsHeader,
  readings: readingsHeader,
  plan: 'engine,bank,hours_per_year,hours_now,hours_now_date,next_overhaul_date,interval_h',
} as const;
type UnitTable = keyof typeof unitTables;
const tableNames = Object.keys(unitTables) as UnitTable[];

/** Limit and its kind as shares of the start; the travel is worn through in some twenty to forty thousand hours. */
const limitOf = {
  thrust_play: ['thrust_play', 1.5],
  runout: ['runout', 1.8],
  tip_compressor: ['tip_compressor_largest', 1.35],
  tip_turbine: ['tip_turbine_largest', 1.4],
} as const;

/** Name of the n-th frame, which is a sister group. */
export function frameName(group: number): string {
  return `Frame ${String(group + 1).padStart(4, '0')}`;
}

/**
 * Writes a fleet of any size as canonical files with its truth (truth.json), unit after unit, so that memory does not grow with it.
 * Units are dealt to the groups in turn: in order of name a group's units lie apart.
 */
export async function writeFleetFolder(folder: string, fleet: MadeFleet): Promise<void> {
  const groups = Math.max(1, Math.ceil(fleet.units / fleet.unitsPerGroup));
  await mkdir(folder, { recursive: true });
  await writeShared(folder, groups);
  let files = fleet.partitioned ? null : openTables(folder);
  for (let group = 0; group < groups; group++) {
    if (fleet.partitioned) {
      const part = join(folder, `frame=${frameName(group)}`);
      await mkdir(part, { recursive: true });
      files = openTables(part);
    }
    if (files === null) continue;
    for (let unit = group; unit < fleet.units; unit += groups) await writeUnit(files, unit, group);
    if (fleet.partitioned || group === groups - 1) for (const name of tableNames) await files[name].end();
  }
}

type Tables = Readonly<Record<UnitTable, TextFile>>;

function openTables(folder: string): Tables {
  const files = tableNames.map((name) => [name, new TextFile(join(folder, `${name}.csv`))] as const);
  for (const [name, file] of files) void file.line(unitTables[name]);
  return Object.fromEntries(files) as Record<UnitTable, TextFile>;
}

async function writeUnit(files: Tables, number: number, group: number): Promise<void> {
  const overhauls = madeUnit(number, group);
  const [first, last] = [overhauls[0], overhauls.at(-1)] as [MadeOverhaul, MadeOverhaul];
  const { unit } = first;
  await files.units.line(`${unit},${frameName(group)},${isoDatePlus(first.date, -45)},150000`);
  for (const [place, overhaul] of overhauls.entries()) {
    await files.overhauls.line(overhaulLine(overhaul, bearingOf(group)));
    for (const line of readingLines(overhaul, place + 2)) await files.readings.line(line);
  }
  const hoursNow =
    last.unitHours + Math.max(0, Math.round((daysBetween(last.date, planDay) * hoursPerYear) / 365.25));
  const next = isoDatePlus(planDay, 30 + Math.floor(370 * drawsFor(`bench plan ${unit}`).uniform()));
  await files.plan.line(`${engineOf(unit)},A,${hoursPerYear},${hoursNow},${planDay},${next},${interval_h}`);
}

function bearingOf(group: number): string {
  return `TB-${group + 1}`;
}

/** Limits and parts of all frames; the gasket set fits every one, so that its stock is shared by all groups. */
async function writeShared(folder: string, groups: number): Promise<void> {
  const limits = new TextFile(join(folder, 'limits.csv'));
  const parts = new TextFile(join(folder, 'parts.csv'));
  await limits.line(limitsHeader);
  await parts.line(partsHeader);
  const truths: object[] = [];
  for (let group = 0; group < groups; group++) {
    const frame = frameName(group);
    const truth = groupTruth(group);
    truths.push({ group: frame, ...truth });
    for (const { characteristic } of measured) {
      const [series, share] = limitOf[characteristic];
      const limit = (truth[characteristic].intercept_mm * share).toFixed(3);
      const resetBy = characteristic === 'thrust_play' ? bearingOf(group) : 'assembly';
      await limits.line(`${frame},${series},upper,${limit},,,${resetBy},Made table (invented),`);
    }
    await parts.line(`${bearingOf(group)},Thrust bearing,${frame},thrust_play,1,18,1500,EUR,4,0,`);
    await parts.line(`GS-1,Gasket set,${frame},,1,8,120,EUR,50,0,`);
  }
  await limits.end();
  await parts.end();
  await writeFile(join(folder, 'truth.json'), `${JSON.stringify(truths, null, 1)}\n`);
}
