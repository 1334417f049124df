import type { ColumnMeaning } from '../../../../../lib/records/intake/types';

/** An invented sheet: column names, some lines, and what each column must mean, written by hand. */
export interface Sheet {
  readonly name: string;
  readonly columns: readonly string[];
  readonly lines?: readonly (readonly string[])[];
  /** `role characteristic stage clock uom` of each column, parts that are not said left out; ? an open viewing end. */
  readonly meanings: readonly string[];
}

export function sheet(name: string, columns: string, meanings: string, ...lines: readonly string[]): Sheet {
  return {
    name,
    columns: columns.split('|').map((column) => column.trim()),
    meanings: meanings.split('|').map((meaning) => meaning.trim()),
    lines: lines.map((line) => line.split('|').map((cell) => cell.trim())),
  };
}

export function samplesOf({ columns, lines = [] }: Sheet): readonly (readonly string[])[] {
  return columns.map((_, index) => lines.map((line) => line[index] ?? ''));
}

export function shortForm(meaning: ColumnMeaning): string {
  const clock = meaning.clock === null ? null : `${meaning.clock}${meaning.viewingEndOpen ? '?' : ''}`;
  return [meaning.role, meaning.characteristic, meaning.stage, clock, meaning.uom]
    .filter((part) => part !== null)
    .join(' ');
}
