import type { CanonicalTable } from '../../records/canonicalTables';
import { cellsApart } from '../../records/csv/normaliseCsv';

/** Cells of a table being read that stand under one name in the list of problems, in the way that list joins them. */
interface JoinedCells {
  readonly name: string;
  /** Positions of their columns. */
  readonly columns: readonly number[];
  readonly separator: string;
}

/** A table of texts as it was cut from a file, before any cell is read. */
export interface EditTarget {
  readonly file: string;
  readonly table: 'dropped' | 'sheet';
  readonly lineColumn: string;
  /** Names of its columns c0, c1, ... as the problems list gives them. */
  readonly names: readonly string[];
  readonly joined: readonly JoinedCells[];
  /** Decimal sign in which the numbers of a column are written; null where it has none or it is not known. */
  readonly signOf: (column: number) => 'point' | 'comma' | null;
}

const intervalSeparator = ' to ';
const keySeparator = ' / ';

/** Value and the ends of an interval, listed as one text: '0.05', '0.02 to 0.03' or '0.025 to 0.02 to 0.03'. */
export function intervalCells(name: string, columns: readonly [number, number, number]): JoinedCells {
  return { name, columns, separator: intervalSeparator };
}

/** All cells of a line, listed as one text. */
export function wholeLine(columns: number): JoinedCells {
  return { name: '', columns: Array.from({ length: columns }, (_, index) => index), separator: cellsApart };
}

/** Cells of a canonical table that the problems list joins: the ends of an interval, and the key of a repeated row. */
export function joinedCellsOf(table: CanonicalTable, names: readonly string[]): readonly JoinedCells[] {
  const at = (name: string) => names.indexOf(name);
  const keys = table.key.map(at).filter((index) => index >= 0);
  const key = { name: table.key[0] ?? '', columns: keys, separator: keySeparator };
  const ends = ['value', 'lower', 'upper'].map(at) as [number, number, number];
  const joined = table.key.length > 1 ? [key] : [];
  return table.name === 'readings' && ends.every((index) => index >= 0)
    ? [...joined, intervalCells('value', ends)]
    : joined;
}

/** New texts of joined cells from their edited text, or null if it has too many parts, or is no line of cells. */
export function partsOf({ columns, separator }: JoinedCells, text: string): readonly string[] | null {
  const mark = separator === cellsApart ? separator.trim() : separator;
  const parts = text.split(mark).map((part) => part.trim());
  const isLine = separator !== cellsApart || parts.length > 1 || columns.length === 1;
  if (parts.length > columns.length || !isLine) return null;
  if (separator === intervalSeparator && parts.length === 2) return ['', ...parts];
  return columns.map((_, index) => parts[index] ?? '');
}
