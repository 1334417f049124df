import { type CanonicalTable, canonicalTable } from '../../records/canonicalTables';
import { convertedRowsSql, faultsType, typeOf } from './convertedRows';
import { quoted } from './quoted';

/** Columns of a typed table before those of its schema; readings keep the text that stands in their file. */
function columnTypes(table: CanonicalTable): string {
  const own = table.name === 'readings' ? 'raw_text VARCHAR, ' : '';
  const columns = table.columns.map((column) => `"${column.name}" ${typeOf(column)}`);
  return `id INTEGER, file VARCHAR, line INTEGER, value_column VARCHAR, ${own}${columns.join(', ')}`;
}

/** Makes the typed table of which no file has a row. */
export function emptyTableSql(table: CanonicalTable): string {
  return `CREATE TABLE ${table.name} (${columnTypes(table)});`;
}

/** Makes the table that takes in converted rows before their faults are listed. */
export function checkedTableSql(table: CanonicalTable): string {
  return `CREATE TABLE checked_${table.name} (${columnTypes(table)}, faults ${faultsType}, held BOOLEAN);`;
}

/** Lists what cannot be read in the checked rows, and leaves out the rows that cannot do without it. */
function settleFaultsSql(table: CanonicalTable): string {
  const checked = `checked_${table.name}`;
  return `INSERT INTO problems SELECT ${quoted(table.name)}, file, line, fault.column_name, fault.raw, fault.reason, 'held' FROM (
      SELECT file, line, unnest(faults) AS fault FROM ${checked} WHERE faults IS NOT NULL)
    WHERE fault.reason IS NOT NULL;
    DELETE FROM ${checked} WHERE held;
    ALTER TABLE ${checked} DROP COLUMN faults;
    ALTER TABLE ${checked} DROP COLUMN held;
    ALTER TABLE ${checked} RENAME TO ${table.name};`;
}

/**
 * Turns the raw rows of a table into typed ones: `<name>` with id, file, line, value_column and the typed columns.
 * Cells that cannot be read go to `problems` with their reason; rows whose needed cells are among them are left out.
 */
export function typedTableSql(table: CanonicalTable): string {
  const rows = {
    from: `raw_${table.name}`,
    number: '(row_number() OVER ())::INTEGER',
    isTidy: false,
  };
  return `CREATE TABLE checked_${table.name} AS ${convertedRowsSql(table, rows)};
    ${settleFaultsSql(table)}`;
}

/**
 * Adds readings to the checked ones, each cell converted and checked as it comes in: a long table is too large to be held twice.
 *
 * @param from SQL for FROM: file, line, value_column, raw_text and the columns of readings as text
 * @param order ORDER BY of the rows; they come in order if it is empty
 */
export function addReadingsSql(from: string, order: string, isTidy = false): string {
  const number = `(row_number() OVER (${order}) + (SELECT coalesce(max(id), 0) FROM checked_readings))::INTEGER`;
  return `INSERT INTO checked_readings ${convertedRowsSql(canonicalTable('readings'), { from, number, isTidy })};`;
}

/** Makes `readings` of the checked readings, and `raw_readings`, which tells for good what came in. */
export function typedReadingsSql(table: CanonicalTable): string {
  return `CREATE TABLE raw_readings AS SELECT file, line, value_column, overhaul FROM checked_readings;
    ${settleFaultsSql(table)}`;
}

/** Rows whose key stands already in an earlier row: exact repetitions, and contradictions. */
export function repeatedRowsSql(table: CanonicalTable): string {
  const key = table.key.map((column) => `"${column}"`).join(', ');
  const others = table.columns
    .map((column) => column.name)
    .filter((name) => !table.key.includes(name) && !name.startsWith('source_'));
  const same = others.map((name) => `"${name}" IS NOT DISTINCT FROM first."${name}"`).join(' AND ') || 'true';
  const fields = others.map((name) => `"${name}" := "${name}"`).join(', ');
  // Hashes first: to rank every row of a long table by its whole key would take longer than all other checks.
  return `WITH ranked AS (
      SELECT *, row_number() OVER same_key AS place, first_value(struct_pack(file := file, line := line, ${fields})) OVER same_key AS first
      FROM ${table.name} WHERE hash(${key}) IN (SELECT hash(${key}) FROM ${table.name} GROUP BY 1 HAVING count(*) > 1)
      WINDOW same_key AS (PARTITION BY ${key} ORDER BY id))
    SELECT id, ${quoted(table.key[0] ?? '')} AS column_name, concat_ws(' / ', ${table.key.map((name) => `CAST("${name}" AS VARCHAR)`).join(', ')}) AS raw,
      CASE WHEN ${same} THEN 'exact repetition of line ' ELSE 'given already with other values in line ' END
        || first.line || ' of ' || first.file AS reason
    FROM ranked WHERE place > 1`;
}

/**
 * SQL condition on a repeated row under which it may be used beside the first: a single reading, which may have been taken
 * twice. Any other row with a key that stands already would double what belongs to the key.
 */
export function repeatedRowIsDoubt(table: CanonicalTable): string {
  return table.name === 'readings' ? 't.clock IS NULL' : 'false';
}
