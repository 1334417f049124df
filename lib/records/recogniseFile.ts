import { type CanonicalTable, canonicalTables } from './canonicalTables';
import type { Characteristic } from './characteristics';
import { readHeader } from './csv/normaliseCsv';
import { headerWords } from './intake/words/headerWords';
import { type WideColumn, wideColumn } from './wideColumns';

/** A file told by the canonical names in its first line. */
export type CanonicalFile =
  | {
      readonly kind: 'table';
      readonly table: CanonicalTable;
      readonly delimiter: string;
      readonly unusedColumns: readonly string[];
    }
  | {
      readonly kind: 'wide';
      readonly columns: readonly WideColumn[];
      /** Name of the column that holds the remarks, which sheets call 'note', 'comment' and more. */
      readonly remarksColumn: string;
      readonly delimiter: string;
      readonly unusedColumns: readonly string[];
    };

/** A file that is none of what is looked for, and why. */
export interface UnknownFile {
  readonly kind: 'none';
  readonly message: string;
}

/** What a file turned out to be; a sheet is a workshop's own form, understood column by column (long: one row a reading). */
export type RecognisedFile =
  | CanonicalFile
  | { readonly kind: 'sheet'; readonly isLong: boolean }
  | UnknownFile;

/** Overhaul columns that a wide sheet may carry beside its readings, and the frame of the unit. */
export const wideSheetColumns = [
  'overhaul',
  'unit',
  'frame',
  'date',
  'unit_hours',
  'engine_hours',
  'site',
  'engine',
  'bank',
  'workshop',
  'kind',
  'fitted',
  'remarks',
] as const;

const delimiters = [',', ';', '\t'] as const;

/** Recognises a file (UTF-8) by the names in its first line; says what was looked for if it can be none of the known tables. */
export function recogniseFile(
  bytes: Uint8Array,
  characteristics: readonly Characteristic[],
): CanonicalFile | UnknownFile {
  let best: CanonicalFile | UnknownFile | null = null;
  let bestScore = 0;
  for (const delimiter of delimiters) {
    const header = readHeader(bytes, delimiter).map((name) => name.toLowerCase());
    const repeated = header.find((name, index) => name !== '' && header.indexOf(name) !== index);
    const [candidate, score] = recogniseHeader(header, delimiter, characteristics);
    if (score > bestScore && repeated !== undefined) {
      return {
        kind: 'none',
        message: `The column '${repeated}' stands twice in the first line: rename one of the two.`,
      };
    }
    if (score > bestScore) [best, bestScore] = [candidate, score];
  }
  return best ?? { kind: 'none', message: `No known columns in the first line. ${whatIsLookedFor}` };
}

const whatIsLookedFor =
  'Looked for a canonical table (units, installations, overhauls, readings, limits, parts, plan, characteristics, events: see the columns below), or for a sheet with one row an overhaul with the columns unit, date and readings named such as thrust_play_found.';

function recogniseHeader(
  header: readonly string[],
  delimiter: string,
  characteristics: readonly Characteristic[],
): readonly [CanonicalFile | UnknownFile | null, number] {
  let best: CanonicalFile | UnknownFile | null = null;
  let bestScore = 0;
  for (const table of canonicalTables) {
    const required = table.columns.filter((column) => column.required);
    if (!required.every((column) => header.includes(column.name))) continue;
    const known = table.columns.filter((column) => header.includes(column.name));
    const score = known.length + required.length;
    if (score > bestScore) {
      const names = new Set(known.map((column) => column.name));
      best = {
        kind: 'table',
        table,
        delimiter,
        unusedColumns: header.filter((name) => name !== '' && !names.has(name)),
      };
      bestScore = score;
    }
  }
  const columns = header.map((name) => wideColumn(name, characteristics)).filter((column) => column !== null);
  if (columns.length > 0 && header.includes('unit') && header.includes('date')) {
    const remarksColumn = remarksColumnOf(header);
    const known = new Set<string>([...wideSheetColumns, remarksColumn, ...columns.map((one) => one.column)]);
    return [
      {
        kind: 'wide',
        columns,
        remarksColumn,
        delimiter,
        unusedColumns: header.filter((name) => name !== '' && !known.has(name)),
      },
      bestScore + columns.length,
    ];
  }
  return [best, bestScore];
}

/** The column named 'remarks', else the first whose name is a trade word for it. */
function remarksColumnOf(header: readonly string[]): string {
  if (header.includes('remarks')) return 'remarks';
  const isFree = (name: string) => !(wideSheetColumns as readonly string[]).includes(name);
  return header.find((name) => isFree(name) && headerWords(name, []).concepts.has('remarks')) ?? 'remarks';
}
