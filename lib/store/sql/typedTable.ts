import type { CanonicalTable } from '../../records/canonicalTables';
import type { Column } from '../../records/columns';
import { quoted } from './quoted';

const numberPattern = '[+-]?([0-9]+[.]?[0-9]*|[.][0-9]+)([eE][+-]?[0-9]{1,3})?';
const datePattern = '[0-9]{4}-[0-9]{2}-[0-9]{2}';

/** The cell as its kind reads it, from the trimmed text; NULL where that is not possible. */
function convertedSql(column: Column): string {
  const cell = `"${column.name}"`;
  if (column.kind === 'number')
    return `CASE WHEN regexp_full_match(${cell}, '${numberPattern}') THEN try_cast(${cell} AS DOUBLE) END`;
  if (column.kind === 'date')
    return `CASE WHEN regexp_full_match(${cell}, '${datePattern}') THEN try_cast(${cell} AS DATE) END`;
  return column.kind === 'choice' ? `lower(${cell})` : cell;
}

/** Why a cell cannot be used, or NULL; from its trimmed text and its converted value. */
function reasonSql(column: Column): string {
  const cell = `"${column.name}"`;
  const value = `"${column.name} value"`;
  const cases: string[] = [];
  const when = (condition: string, reason: string) => cases.push(`WHEN ${condition} THEN ${quoted(reason)}`);
  if (column.required) when(`${cell} IS NULL`, `the cell is empty; expected: ${column.description}`);
  if (column.kind === 'number') {
    when(
      `${cell} IS NOT NULL AND ${value} IS NULL`,
      'not a number (digits with a decimal point are expected)',
    );
    const unit = column.unit === undefined ? '' : ` ${column.unit}`;
    const outside = `outside ${column.min ?? 'any'} to ${column.max ?? 'any'}${unit}`;
    if (column.min !== undefined) when(`${value} < ${column.min}`, outside);
    if (column.max !== undefined) when(`${value} > ${column.max}`, outside);
  }
  if (column.kind === 'date') {
    when(`${cell} IS NOT NULL AND ${value} IS NULL`, 'not a day of the calendar (YYYY-MM-DD is expected)');
    when(`year(${value}) NOT BETWEEN 1950 AND 2100`, 'the year is outside 1950 to 2100');
  }
  if (column.kind === 'choice') {
    const choices = column.choices ?? [];
    when(`${value} NOT IN (${choices.map(quoted).join(', ')})`, `not one of: ${choices.join(', ')}`);
  }
  return cases.length === 0 ? 'CAST(NULL AS VARCHAR)' : `CASE ${cases.join(' ')} END`;
}

/**
 * Turns the raw rows of a table into typed ones: `<name>` with id, file, line, value_column and the typed columns.
 * Cells that cannot be read go to `problems` with their reason; rows whose needed cells are among them are left out.
 */
export function typedTableSql(table: CanonicalTable): string {
  const each = (of: (column: Column) => string) => table.columns.map(of).join(',\n      ');
  const faults = table.columns.map(
    (column) =>
      `{'column_name': ${columnNameSql(column)}, 'raw': coalesce(${column.name === 'value' ? 'raw_text, ' : ''}"${column.name} raw", ''), 'reason': "${column.name} reason"}`,
  );
  const usable = table.columns
    .filter((column) => column.holdsRow)
    .map((column) => `"${column.name} reason" IS NULL`);
  return `CREATE TABLE checked AS
    WITH cells AS (SELECT row_number() OVER (ORDER BY r.rowid)::INTEGER AS id, r.file, r.line, r.value_column, r.raw_text,
      ${each((column) => `r."${column.name}" AS "${column.name} raw", nullif(trim(r."${column.name}"), '') AS "${column.name}"`)}
      FROM raw_${table.name} r),
    converted AS (SELECT *, ${each((column) => `${convertedSql(column)} AS "${column.name} value"`)} FROM cells)
    SELECT *, ${each((column) => `${reasonSql(column)} AS "${column.name} reason"`)} FROM converted;
    INSERT INTO problems SELECT ${quoted(table.name)}, file, line, fault.column_name, fault.raw, fault.reason, 'held' FROM (
      SELECT file, line, unnest([${faults.join(', ')}]) AS fault FROM checked
      WHERE ${table.columns.map((column) => `"${column.name} reason" IS NOT NULL`).join(' OR ')})
    WHERE fault.reason IS NOT NULL;
    CREATE TABLE ${table.name} AS SELECT id, file, line, value_column,
      ${each((column) => `CASE WHEN "${column.name} reason" IS NULL THEN "${column.name} value" END AS "${column.name}"`)}
    FROM checked WHERE ${usable.length === 0 ? 'true' : usable.join(' AND ')};
    DROP TABLE checked;`;
}

/** In a wide sheet the value stands under a column of its own name. */
function columnNameSql(column: Column): string {
  return column.name === 'value' ? `coalesce(value_column, 'value')` : quoted(column.name);
}

/** Rows whose key stands already in an earlier row: exact repetitions, and contradictions. */
export function repeatedRowsSql(table: CanonicalTable): string {
  const key = table.key.map((column) => `"${column}"`).join(', ');
  const others = table.columns
    .map((column) => column.name)
    .filter((name) => !table.key.includes(name) && !name.startsWith('source_'));
  const same = others.map((name) => `"${name}" IS NOT DISTINCT FROM first."${name}"`).join(' AND ') || 'true';
  const fields = table.columns.map((column) => `"${column.name}" := "${column.name}"`).join(', ');
  return `WITH ranked AS (
      SELECT *, row_number() OVER (PARTITION BY ${key} ORDER BY id) AS place,
        first_value(struct_pack(file := file, line := line, ${fields})) OVER (PARTITION BY ${key} ORDER BY id) AS first
      FROM ${table.name})
    SELECT id, ${quoted(table.key[0] ?? '')} AS column_name, concat_ws(' / ', ${table.key.map((name) => `CAST("${name}" AS VARCHAR)`).join(', ')}) AS raw,
      CASE WHEN ${same} THEN 'exact repetition of line ' ELSE 'given already with other values in line ' END
        || first.line || ' of ' || first.file AS reason
    FROM ranked WHERE place > 1`;
}
