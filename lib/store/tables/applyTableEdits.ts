import { group } from 'd3-array';
import { canonicalTable } from '../../records/canonicalTables';
import type { TableDecision } from '../../records/decisions/Decision';
import type { EditedTable } from '../../records/decisions/editedTables';
import { rowKey, tablesPage } from '../../records/decisions/tableEdits';
import type { Connector, Row } from '../Connector';
import { quoted } from '../sql/quoted';

/**
 * Puts the rows of a table that a person edited in place of the text rows of the same key, before any cell is read: all checks
 * hold for them too. Rows of files that were replaced or removed are listed as held, so that the counts of their files add up.
 * The order in which the edits are given makes no difference.
 */
export async function applyTableEdits(
  connector: Connector,
  table: EditedTable,
  decisions: readonly TableDecision[],
): Promise<void> {
  const edits = decisions.filter((one) => one.table === table).toSorted(byLine);
  if (edits.length === 0) return;
  const rowsOf = group(await keyedRows(connector, table), ({ key }) => key);
  const setAside = edits.flatMap((edit) =>
    (rowsOf.get(JSON.stringify(edit.key)) ?? []).map(({ id }) => setAsideRow(edit, id)),
  );
  if (setAside.length > 0) await connector.run(setAsideSql(table, setAside));
  const added = edits.flatMap((edit) => (edit.cells === null ? [] : [addedSql(edit, edit.cells)]));
  if (added.length > 0) await connector.run(added.join(';\n'));
}

function byLine(a: TableDecision, b: TableDecision): number {
  return (a.line ?? 0) - (b.line ?? 0) || (a.id < b.id ? -1 : 1);
}

async function keyedRows(connector: Connector, table: EditedTable) {
  const columns = canonicalTable(table).key.map((name) => `"${name}"`);
  const rows = await connector.query(
    `SELECT rowid::INTEGER AS row_id, ${columns.join(', ')} FROM raw_${table} ORDER BY rowid`,
  );
  return rows.map((row) => ({ id: Number(row.row_id), key: JSON.stringify(rowKey(table, texts(row))) }));
}

function texts(row: Row): Readonly<Record<string, string>> {
  return Object.fromEntries(Object.entries(row).map(([name, cell]) => [name, String(cell ?? '')]));
}

function setAsideRow({ key, cells, line }: TableDecision, id: number): string {
  const name = key.filter((text) => text !== '').join(' / ');
  const reason = `${cells === null ? 'removed' : 'replaced'} on the ${tablesPage} (number ${line ?? 0} of the journal)`;
  return `(${id}, ${quoted(name)}, ${quoted(reason)})`;
}

function setAsideSql(table: EditedTable, rows: readonly string[]): string {
  return `CREATE TABLE set_aside AS SELECT * FROM (VALUES ${rows.join(', ')}) AS rows(row_id, name, reason);
    INSERT INTO problems SELECT ${quoted(table)}, t.file, t.line, '', s.name, s.reason, 'held' FROM raw_${table} t JOIN set_aside s ON s.row_id = t.rowid;
    DELETE FROM raw_${table} WHERE rowid IN (SELECT row_id FROM set_aside);
    DROP TABLE set_aside`;
}

function addedSql({ table, line }: TableDecision, cells: Readonly<Record<string, string>>): string {
  const filled = canonicalTable(table).columns.flatMap(({ name }) => {
    const text = cells[name];
    return text === undefined ? [] : [{ name: `"${name}"`, text: quoted(text) }];
  });
  const names = ['file', 'line', ...filled.map(({ name }) => name)];
  const values = [quoted(tablesPage), line ?? 0, ...filled.map(({ text }) => text)];
  return `INSERT INTO raw_${table} (${names.join(', ')}) VALUES (${values.join(', ')})`;
}
