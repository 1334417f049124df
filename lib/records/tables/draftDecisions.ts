import type { Decision, TableDecision } from '../decisions/Decision';
import type { EditedTable } from '../decisions/editedTables';
import { rowKey, tableEdit, tableEditsOf, tablesPage } from '../decisions/tableEdits';
import { type Draft, type DraftRow, isChanged } from './tableDraft';

/**
 * What a draft decides: for every key that a change touches, the row that is left with it, or that none is. A row whose name was
 * changed is so removed under its old name and added under the new one.
 *
 * @param inForce decisions in force, for what the files have where a row was edited before
 */
export function draftDecisions(
  table: EditedTable,
  draft: Draft,
  inForce: readonly Decision[],
): readonly TableDecision[] {
  const editable = draft.filter(({ origin }) => origin?.isDerived !== true);
  const left = keyed(table, editable.filter(isLeft), ({ texts }) => texts);
  const stood = keyed(table, editable, ({ origin }) => origin?.texts ?? null);
  const touched = new Set(
    editable.filter(isChanged).flatMap(({ origin, texts, isRemoved }) => {
      const names = [origin?.texts, isRemoved ? undefined : texts];
      return names.flatMap((one) => (one === undefined ? [] : [JSON.stringify(rowKey(table, one))]));
    }),
  );
  const earlier = new Map(tableEditsOf(inForce).map((one) => [one.id, one]));
  return [...touched].map((key) => {
    const decided = tableEdit(table, JSON.parse(key), left.get(key)?.texts ?? null, null);
    const before = earlier.get(decided.id);
    if (before !== undefined) return { ...decided, was: before.was };
    const origin = stood.get(key)?.origin ?? null;
    const was = origin === null || origin.file === tablesPage ? null : origin.texts;
    return tableEdit(table, decided.key, decided.cells, was);
  });
}

function isLeft(row: DraftRow): boolean {
  return !row.isRemoved && (row.origin !== null || isChanged(row));
}

/** Rows by the key of some of their texts, the first of each key. */
function keyed(
  table: EditedTable,
  rows: Draft,
  textsOf: (row: DraftRow) => DraftRow['texts'] | null,
): ReadonlyMap<string, DraftRow> {
  const found = new Map<string, DraftRow>();
  for (const row of rows) {
    const texts = textsOf(row);
    const key = texts === null ? null : JSON.stringify(rowKey(table, texts));
    if (key !== null && !found.has(key)) found.set(key, row);
  }
  return found;
}
