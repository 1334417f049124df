import { wideSheetColumns } from '../../recogniseFile';
import type { ColumnRole } from '../types';
import type { Concept } from './concepts';

/** Role that the words of a header give to a column other than a reading's, in plain words, and how surely (0 to 1). */
export interface RoleWords {
  readonly role: ColumnRole;
  readonly meaning: string;
  readonly sureness: number;
}

type Rule = readonly [needs: readonly Concept[], role: ColumnRole, meaning: string, sureness: number];

/** The first rule whose words all stand in the header is taken; so the order says which word outweighs which. */
const rules: readonly Rule[] = [
  [['remarks'], 'remarks', 'remarks', 0.95],
  [['date'], 'date', 'date of the overhaul', 0.95],
  [['hours', 'engine'], 'engine_hours', 'reading of the engine meter', 0.95],
  [['hours', 'unit'], 'unit_hours', 'hours of the unit', 0.95],
  [['hours', 'serial'], 'unit_hours', 'hours of the unit', 0.9],
  [['hours'], 'unit_hours', 'hours, taken as the unit’s own since no engine is named', 0.7],
  [['revision'], 'revision', 'revision', 0.8],
  [['fitted'], 'fitted', 'parts fitted', 0.9],
  [['type', 'overhaul'], 'kind', 'kind of overhaul', 0.85],
  [['kind'], 'kind', 'kind of overhaul', 0.8],
  [['planned'], 'kind', 'kind of overhaul', 0.8],
  [['type', 'engine'], 'unused', 'type of the engine', 0.9],
  [['frame', 'engine'], 'unused', 'model of the engine', 0.9],
  [['frame'], 'frame', 'frame', 0.85],
  [['type'], 'frame', 'type, taken as the frame of the unit', 0.65],
  [['workshop'], 'workshop', 'workshop', 0.85],
  [['bank'], 'bank', 'bank of the engine', 0.8],
  [['serial', 'engine'], 'engine', 'engine', 0.9],
  [['serial', 'unit'], 'unit', 'unit by its serial', 0.97],
  [['serial'], 'unit', 'serial, taken as the unit’s', 0.9],
  [['unit', 'engine'], 'unit', 'unit', 0.6],
  [['engine'], 'engine', 'engine', 0.9],
  [['overhaul'], 'overhaul', 'number of the overhaul or job', 0.75],
  [['unit', 'number'], 'unit', 'unit', 0.92],
  [['unit'], 'unit', 'unit', 0.85],
  [['uom'], 'uom', 'unit of measure', 0.85],
  [['site'], 'site', 'site', 0.85],
  [['characteristic'], 'characteristic', 'what was measured', 0.8],
  [['stage'], 'stage', 'stage of the reading', 0.8],
  [['position'], 'clock', 'clock position', 0.8],
  [['lower'], 'lower', 'lower end of an interval', 0.8],
  [['upper'], 'upper', 'upper end of an interval', 0.8],
  [['value'], 'value', 'value of the reading', 0.85],
];

/** Words that keep a header from naming a reading, even beside a characteristic ('Axialspiel Bemerkung'). */
const outweighReadings: readonly Concept[] = ['remarks', 'date', 'hours', 'fitted', 'workshop', 'revision'];

/** The role that the words give, or null if they give none. */
export function roleOfWords(concepts: ReadonlySet<Concept>): RoleWords | null {
  const rule = rules.find(([needs]) => needs.every((concept) => concepts.has(concept)));
  return rule === undefined ? null : { role: rule[1], meaning: rule[2], sureness: rule[3] };
}

/** Whether the words allow the column to hold readings of a characteristic that they name. */
export function allowReadings(concepts: ReadonlySet<Concept>): boolean {
  return !outweighReadings.some((concept) => concepts.has(concept));
}

/** Words of a header that say nothing but stage, position or value: it belongs to the header before it, or to a cell. */
const belongs: ReadonlySet<Concept> = new Set([
  'found',
  'left',
  'left_or_side',
  '12',
  '3',
  '6',
  '9',
  'clock_word',
  'seen_from',
  'compressor',
  'turbine',
  'tip',
  'gap',
  'value',
  'position',
  'lower',
  'upper',
  'filler',
]);

/** Whether the words only say a stage, a position or both. */
export function onlyPlaces(concepts: ReadonlySet<Concept>): boolean {
  return [...concepts].every((concept) => belongs.has(concept));
}

const canonicalRoles: readonly ColumnRole[] = [
  ...wideSheetColumns,
  'characteristic',
  'stage',
  'clock',
  'value',
  'uom',
  'lower',
  'upper',
];

/** Canonical column of that exact name, or null. */
export function canonicalRole(name: string): ColumnRole | null {
  const bare = name.trim().toLowerCase();
  return canonicalRoles.find((role) => role === bare) ?? null;
}
