import { canonicalTable } from '../../lib/records/canonicalTables';
import type { Decision, JournalEntry, TableDecision } from '../../lib/records/decisions/Decision';

const noRow = 'no such row';

/** The cells that name a row of a table, those that are filled: '‘Lark / runout / upper’'. */
export function rowName(key: readonly string[]): string {
  return `‘${key.filter((text) => text !== '').join(' / ')}’`;
}

/** The cells of a row beside those that name it: 'limit 0.3, source table 1'. */
export function rowWords(table: TableDecision['table'], cells: TableDecision['cells']): string {
  if (cells === null) return noRow;
  const { key } = canonicalTable(table);
  const others = Object.entries(cells).filter(([column]) => !key.includes(column));
  return others.length === 0 ? 'nothing beside its name' : others.map(cellWords).join(', ');
}

/** What an entry about a row of a table changed, before and after: of a row that stays, the cells that changed. */
export function changedWords(
  { table, cells, was }: TableDecision,
  act: JournalEntry['act'],
  decidedBefore: Decision | null,
): { readonly before: string; readonly after: string } {
  const before = decidedBefore?.kind === 'table' ? decidedBefore.cells : was;
  const after = act === 'decided' ? cells : was;
  if (before === null || after === null)
    return { before: rowWords(table, before), after: rowWords(table, after) };
  const changed = canonicalTable(table)
    .columns.map(({ name }) => name)
    .filter((name) => before[name] !== after[name]);
  if (changed.length === 0) return { before: rowWords(table, before), after: 'the same' };
  const words = (row: Readonly<Record<string, string>>) =>
    changed.map((name) => cellWords([name, row[name] ?? 'empty'])).join(', ');
  return { before: words(before), after: words(after) };
}

function cellWords([column, text]: readonly [string, string]): string {
  return `${column} ${text}`;
}
