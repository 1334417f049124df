import { type CanonicalTable, canonicalTables } from './canonicalTables';
import type { Characteristic } from './characteristics';
import { readHeader } from './csv/normaliseCsv';
import { type WideColumn, wideColumn } from './wideColumns';

/** What a file turned out to be. */
export type RecognisedFile =
  | {
      readonly kind: 'table';
      readonly table: CanonicalTable;
      readonly delimiter: string;
      readonly unusedColumns: readonly string[];
    }
  | {
      readonly kind: 'wide';
      readonly columns: readonly WideColumn[];
      readonly delimiter: string;
      readonly unusedColumns: readonly string[];
    }
  | { readonly kind: 'none'; readonly message: string };

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

/** Recognises a file by the names in its first line; says what was looked for if it can be none of the known tables. */
export function recogniseFile(bytes: Uint8Array, characteristics: readonly Characteristic[]): RecognisedFile {
  const unreadable = whyUnreadable(bytes);
  if (unreadable !== null) return { kind: 'none', message: unreadable };
  let best: RecognisedFile | null = null;
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
): readonly [RecognisedFile | null, number] {
  let best: RecognisedFile | null = null;
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
    const known = new Set<string>([...wideSheetColumns, ...columns.map((column) => column.column)]);
    return [
      {
        kind: 'wide',
        columns,
        delimiter,
        unusedColumns: header.filter((name) => name !== '' && !known.has(name)),
      },
      bestScore + columns.length,
    ];
  }
  return [best, bestScore];
}

/** Why the bytes cannot be a CSV file in UTF-8, in words that say what to do, or null. */
function whyUnreadable(bytes: Uint8Array): string | null {
  if (bytes.length === 0) return 'The file is empty (0 bytes): export it again.';
  if (bytes.subarray(0, 65_536).includes(0)) {
    return 'The file is not text (it holds zero bytes): save the sheet as CSV, UTF-8, and drop that.';
  }
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const step = 1 << 20;
  for (let start = 0; start < bytes.length; start += step) {
    try {
      decoder.decode(bytes.subarray(start, start + step), { stream: start + step < bytes.length });
    } catch {
      return `The text is not UTF-8 (a byte after position ${start} has no meaning there): save the sheet as CSV, UTF-8, and drop that.`;
    }
  }
  return null;
}
