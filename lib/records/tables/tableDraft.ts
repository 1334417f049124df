import { canonicalTable } from '../canonicalTables';
import type { EditedTable } from '../decisions/editedTables';
import { type RowTexts, rowKey } from '../decisions/tableEdits';
import { cellFault } from './cellFault';
import type { TableRow } from './TableRow';

/** A row being edited, nothing of it applied yet. */
export interface DraftRow {
  readonly id: string;
  /** The row as it stands; null for one that was added. */
  readonly origin: TableRow | null;
  readonly texts: RowTexts;
  readonly isRemoved: boolean;
}

/** The rows of a table being edited. */
export type Draft = readonly DraftRow[];

/** What to do about cells that cannot be applied, by row and column. */
export type Faults = ReadonlyMap<string, ReadonlyMap<string, string>>;

/** The rows as they stand. */
export function draftOf(rows: readonly TableRow[]): Draft {
  return rows.map((origin, index) => ({
    id: `row ${index}`,
    origin,
    texts: origin.texts,
    isRemoved: false,
  }));
}

/** The draft with another text in a cell; rows that follow from an answer stay as they are. */
export function withCell(draft: Draft, id: string, column: string, text: string): Draft {
  return draft.map((row) =>
    row.id === id && mayEdit(row) && (row.texts[column] ?? '') !== text
      ? { ...row, texts: { ...row.texts, [column]: text } }
      : row,
  );
}

/** The draft with empty rows at its end. */
export function withAddedRows(draft: Draft, count: number): Draft {
  const added = draft.filter(({ origin }) => origin === null).length;
  const rows = Array.from({ length: count }, (_, index) => ({
    id: `added ${added + index}`,
    origin: null,
    texts: {},
    isRemoved: false,
  }));
  return [...draft, ...rows];
}

/** The draft with a row removed or kept. */
export function withRemoved(draft: Draft, id: string, isRemoved: boolean): Draft {
  return draft.map((row) => (row.id === id && row.origin?.isDerived !== true ? { ...row, isRemoved } : row));
}

/** Whether the cells of a row may be edited. */
export function mayEdit({ origin, isRemoved }: DraftRow): boolean {
  return origin?.isDerived !== true && !isRemoved;
}

/** Whether a row differs from how it stands; an added row that is empty or removed does not. */
export function isChanged({ origin, texts, isRemoved }: DraftRow): boolean {
  if (origin === null) return !isRemoved && Object.values(texts).some((text) => text.trim() !== '');
  return isRemoved || changedColumns(texts, origin.texts).length > 0;
}

/** Columns in which a row differs from how it stands. */
export function changedColumns(texts: RowTexts, origin: RowTexts): readonly string[] {
  return Object.keys(texts).filter((name) => (texts[name] ?? '').trim() !== (origin[name] ?? '').trim());
}

/** What is to be done about cells before the edits can be applied: only rows that were changed are looked at. */
export function faultsOf(table: EditedTable, draft: Draft): Faults {
  const { columns, key } = canonicalTable(table);
  const rowsOf = new Map<string, number>();
  const keyOf = (row: DraftRow) => JSON.stringify(rowKey(table, row.texts));
  for (const row of draft.filter(mayEdit)) rowsOf.set(keyOf(row), (rowsOf.get(keyOf(row)) ?? 0) + 1);
  const faulty = draft
    .filter((row) => isChanged(row) && !row.isRemoved)
    .map((row): readonly [string, ReadonlyMap<string, string>] => {
      const found = columns.flatMap(({ name }): readonly (readonly [string, string])[] => {
        const fault = cellFault(table, name, row.texts[name] ?? '');
        if (fault !== null) return [[name, fault]];
        const isRepeated = name === key[0] && (rowsOf.get(keyOf(row)) ?? 0) > 1;
        return isRepeated
          ? [[name, `Another row has the same ${key.join(', ')}: change or remove one.`]]
          : [];
      });
      return [row.id, new Map(found)];
    });
  return new Map(faulty.filter(([, cells]) => cells.size > 0));
}
