import type { z } from 'zod';
import { type Column, columnsOf } from './columns';
import { limitsSchema, partsSchema } from './limitRecords';
import { characteristicsSchema, overhaulsSchema, readingsSchema } from './overhaulRecords';
import { eventsSchema, installationsSchema, planSchema, unitsSchema } from './unitRecords';

export type TableName =
  | 'units'
  | 'installations'
  | 'overhauls'
  | 'readings'
  | 'limits'
  | 'parts'
  | 'plan'
  | 'characteristics'
  | 'events';

/** One canonical table: its columns, and the columns that may stand only once together. */
export interface CanonicalTable {
  readonly name: TableName;
  readonly description: string;
  readonly columns: readonly Column[];
  /** What a row is checked by once its texts are read. */
  readonly schema: z.ZodObject;
  readonly key: readonly string[];
}

function table(
  name: TableName,
  description: string,
  schema: z.ZodObject,
  key: readonly string[],
): CanonicalTable {
  return { name, description, columns: columnsOf(schema), schema, key };
}

/** Every canonical table, in the order in which they are checked. */
export const canonicalTables: readonly CanonicalTable[] = [
  table('units', 'one row a unit', unitsSchema, ['unit']),
  table('characteristics', 'characteristics added to the built-in ones', characteristicsSchema, [
    'characteristic',
  ]),
  table('installations', 'where each unit sat, from when to when', installationsSchema, [
    'unit',
    'from_date',
  ]),
  table(
    'overhauls',
    'one row an opening of a unit; a delivery record is an overhaul at 0 h',
    overhaulsSchema,
    ['overhaul'],
  ),
  table('readings', 'one row a reading', readingsSchema, ['overhaul', 'characteristic', 'stage', 'clock']),
  table('limits', 'limits and assembly ranges by frame and series', limitsSchema, [
    'frame',
    'series',
    'limit_kind',
    'valid_from',
  ]),
  table('parts', 'spare parts, stock and lead times', partsSchema, ['part', 'frame']),
  table('plan', 'duty and next overhaul of each position', planSchema, ['engine', 'bank']),
  table('events', 'meters replaced or corrected, units moved', eventsSchema, ['date', 'engine', 'kind']),
];

/** The canonical table of that name. */
export function canonicalTable(name: TableName): CanonicalTable {
  const found = canonicalTables.find((candidate) => candidate.name === name);
  if (found === undefined) throw new Error(`canonicalTable requires a canonical name, got '${name}'`);
  return found;
}
