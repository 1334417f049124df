import { type CanonicalTable, canonicalTable } from '../../records/canonicalTables';
import type { Connector } from '../Connector';
import { holdRows } from '../holdRows';
import { quoted } from '../sql/quoted';

const reasonSql = `'left out: ' || signed_reason(r.reason, r.by_whom)`;

/**
 * Holds the rows of a typed table that a person left out, whatever else is or comes to be known of them: by the whole line, by
 * a cell that the row cannot do without, or by the reading itself. Readings that stand in the line of an overhaul go with it.
 */
export async function holdLeftOut(connector: Connector, table: CanonicalTable): Promise<void> {
  const isReadings = table.name === 'readings';
  const rowName = isReadings ? `coalesce(t.value_column, 'value')` : "''";
  const ofOverhaul = [...neededBy(canonicalTable('overhauls')), "'unit_hours'"].join(', ');
  const ofRow = table.name === 'overhauls' ? ofOverhaul : neededBy(table).join(', ');
  const isOwn = isReadings
    ? `r.column_name = ${rowName} OR r.record_column IN (${ofRow}) OR (t.value_column IS NOT NULL AND r.record_column IN (${ofOverhaul}))`
    : `r.record_column IN (${ofRow})`;
  const isOfAnother = isReadings
    ? `t.value_column IS NOT NULL AND r.column_name NOT IN ('', t.value_column)`
    : 'false';
  await holdRows(
    connector,
    table.name,
    `SELECT t.id, any_value(CASE WHEN r.column_name = '' OR ${isOfAnother} THEN ${rowName} ELSE r.record_column END) AS column_name,
        any_value(${isReadings ? `CASE WHEN ${isOfAnother} THEN t.raw_text ELSE r.raw END` : 'r.raw'}) AS raw, any_value(${reasonSql}) AS reason
      FROM ${table.name} t JOIN record_rulings r ON r.ruling = 'leave out' AND r.file = t.file AND r.line = t.line
      WHERE r.is_same IS DISTINCT FROM false AND (r.column_name = '' OR ${isOwn}) GROUP BY t.id`,
  );
}

function neededBy(table: CanonicalTable): readonly string[] {
  return table.columns.filter((column) => column.holdsRow).map((column) => quoted(column.name));
}

/** Takes the lines that a person left out from the sheet being read and lists them. */
export async function dropLeftOutLines(connector: Connector, file: string): Promise<void> {
  const leftOut = `r.ruling = 'leave out' AND r.column_name = '' AND r.file = ${quoted(file)} AND r.is_same`;
  await connector.run(`INSERT INTO problems SELECT 'sheet', r.file, r.line, '', r.raw, ${reasonSql}, 'held' FROM rulings r WHERE ${leftOut};
    DELETE FROM sheet WHERE line::INTEGER IN (SELECT r.line FROM rulings r WHERE ${leftOut})`);
}
