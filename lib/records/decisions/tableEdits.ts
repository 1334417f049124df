import { canonicalTable } from '../canonicalTables';
import type { Decision, JournalEntry, TableDecision } from './Decision';
import type { EditedTable } from './editedTables';
import { decisionsInForce } from './journal';

/** Name under which edited rows stand where others name their file; their line is the number of their entry in the journal. */
export const tablesPage = 'Tables page';

/** Texts of a row by column; an empty cell may be left out. */
export type RowTexts = Readonly<Record<string, string>>;

/** Texts of the cells that name a row, as two rows are compared by them: trimmed, words of choice in small letters. */
export function rowKey(table: EditedTable, cells: RowTexts): readonly string[] {
  const { columns, key } = canonicalTable(table);
  return key.map((name) => {
    const text = (cells[name] ?? '').trim();
    return columns.find((column) => column.name === name)?.kind === 'choice' ? text.toLowerCase() : text;
  });
}

/**
 * What a row of a table is to hold in place of what files say of it; of several about the same key the latest holds.
 *
 * @param cells null for a row that is removed
 * @param was the row as the files have it; null if none has it
 */
export function tableEdit(
  table: EditedTable,
  key: readonly string[],
  cells: RowTexts | null,
  was: RowTexts | null,
): TableDecision {
  return {
    kind: 'table',
    id: `table | ${table} | ${JSON.stringify(key)}`,
    table,
    key: [...key],
    cells: filledCells(table, cells),
    was: filledCells(table, was),
  };
}

/** The cells of a row that hold a text, trimmed, in order of the table's columns. */
function filledCells(table: EditedTable, cells: RowTexts | null): Record<string, string> | null {
  if (cells === null) return null;
  return Object.fromEntries(
    canonicalTable(table).columns.flatMap(({ name }) => {
      const text = (cells[name] ?? '').trim();
      return text === '' ? [] : [[name, text]];
    }),
  );
}

/**
 * Decisions in force as files are read with them: edited rows know the number of the entry that first said so, which undoing
 * and doing again do not change.
 */
export function decisionsForReading(journal: readonly JournalEntry[]): readonly Decision[] {
  const firstNumbers = new Map<string, number>();
  for (const { number, act, decision } of journal) {
    if (act !== 'decided' || decision.kind !== 'table') continue;
    const said = JSON.stringify(decision);
    if (!firstNumbers.has(said)) firstNumbers.set(said, number);
  }
  return decisionsInForce(journal).map((decision) => {
    const line = firstNumbers.get(JSON.stringify(decision));
    return decision.kind === 'table' && line !== undefined ? { ...decision, line } : decision;
  });
}

/** Edited rows among decisions. */
export function tableEditsOf(decisions: readonly Decision[]): readonly TableDecision[] {
  return decisions.filter((one) => one.kind === 'table');
}
