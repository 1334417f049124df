import type { CanonicalTable } from '../../records/canonicalTables';
import { convertedRowsSql } from './convertedRows';
import { quoted } from './quoted';

/** Lists what cannot be read in the checked rows, and leaves out the rows that cannot do without it. */
export function settleFaultsSql(table: CanonicalTable): string {
  const checked = `checked_${table.name}`;
  return `INSERT INTO problems SELECT ${quoted(table.name)}, file, line, fault.column_name, fault.raw, fault.reason, 'held' FROM (
      SELECT file, line, unnest(faults) AS fault FROM ${checked} WHERE faults IS NOT NULL)
    WHERE fault.reason IS NOT NULL;
    DELETE FROM ${checked} WHERE ${heldSql};`;
}

/** Condition that a checked row lacks a cell that it cannot do without. */
export const heldSql =
  'faults IS NOT NULL AND len(list_filter(faults, lambda fault: fault.reason IS NOT NULL AND fault.holds)) > 0';

/** Makes the typed table of the checked rows that are left. */
export function takeCheckedSql(table: CanonicalTable): string {
  const checked = `checked_${table.name}`;
  return `ALTER TABLE ${checked} DROP COLUMN faults;
    ALTER TABLE ${checked} RENAME TO ${table.name};`;
}

/** Makes the table of a table's raw rows with every cell converted and checked. */
export function checkedTableSql(table: CanonicalTable): string {
  const rows = { from: `raw_${table.name}`, id: '(row_number() OVER ())::INTEGER', isTidy: false };
  return `CREATE TABLE checked_${table.name} AS ${convertedRowsSql(table, rows)}`;
}
