import type { CanonicalTable } from '../../records/canonicalTables';
import type { Column } from '../../records/columns';
import { quoted } from './quoted';

const numberPattern = '[+-]?([0-9]+[.]?[0-9]*|[.][0-9]+)([eE][+-]?[0-9]{1,3})?';

function trimmed(column: Column): string {
  return `nullif(trim(r."${column.name}"), '')`;
}

function asNumber(cell: string): string {
  return `CASE WHEN regexp_full_match(${cell}, '${numberPattern}') THEN try_cast(${cell} AS DOUBLE) END`;
}

function asDate(cell: string): string {
  return `CASE WHEN regexp_full_match(${cell}, '[0-9]{4}-[0-9]{2}-[0-9]{2}') THEN try_cast(${cell} AS DATE) END`;
}

/** The typed value of a cell; NULL where the cell is empty or cannot be read. */
function typedSql(column: Column): string {
  const cell = trimmed(column);
  if (column.kind === 'number') return `CASE WHEN ${reasonSql(column)} IS NULL THEN ${asNumber(cell)} END`;
  if (column.kind === 'date') return asDate(cell);
  if (column.kind === 'choice') return `CASE WHEN ${reasonSql(column)} IS NULL THEN lower(${cell}) END`;
  return cell;
}

function bounds(column: Column): string {
  const unit = column.unit === undefined ? '' : ` ${column.unit}`;
  return `outside ${column.min ?? 'any'} to ${column.max ?? 'any'}${unit}`;
}

/** Why a cell cannot be used, or NULL. */
function reasonSql(column: Column): string {
  const cell = trimmed(column);
  const cases: string[] = [];
  if (column.required)
    cases.push(`WHEN ${cell} IS NULL THEN ${quoted(`the cell is empty; expected: ${column.description}`)}`);
  if (column.kind === 'number') {
    cases.push(
      `WHEN ${cell} IS NOT NULL AND (${asNumber(cell)}) IS NULL THEN 'not a number (digits with a decimal point are expected)'`,
    );
    const outside = [
      column.min === undefined ? null : `(${asNumber(cell)}) < ${column.min}`,
      column.max === undefined ? null : `(${asNumber(cell)}) > ${column.max}`,
    ].filter((condition) => condition !== null);
    if (outside.length > 0) cases.push(`WHEN ${outside.join(' OR ')} THEN ${quoted(bounds(column))}`);
  }
  if (column.kind === 'date') {
    cases.push(
      `WHEN ${cell} IS NOT NULL AND (${asDate(cell)}) IS NULL THEN 'not a day of the calendar (YYYY-MM-DD is expected)'`,
    );
    cases.push(
      `WHEN year(${asDate(cell)}) NOT BETWEEN 1950 AND 2100 THEN 'the year is outside 1950 to 2100'`,
    );
  }
  if (column.kind === 'choice') {
    const choices = (column.choices ?? []).map(quoted).join(', ');
    const words = (column.choices ?? []).join(', ');
    cases.push(`WHEN lower(${cell}) NOT IN (${choices}) THEN ${quoted(`not one of: ${words}`)}`);
  }
  return cases.length === 0 ? 'CAST(NULL AS VARCHAR)' : `(CASE ${cases.join(' ')} END)`;
}

/**
 * Turns the raw rows of a table into typed ones: `<name>` with id, file, line, value_column and the typed columns.
 * Cells that cannot be read go to `problems` with their reason; rows whose needed cells are among them are left out.
 */
export function typedTableSql(table: CanonicalTable): string {
  const typed = table.columns.map((column) => `${typedSql(column)} AS "${column.name}"`).join(',\n      ');
  const faults = table.columns.map(
    (
      column,
    ) => `SELECT ${quoted(table.name)}, r.file, r.line, ${columnNameSql(column)}, coalesce(r."${column.name}", ''), ${reasonSql(column)}, 'held'
      FROM raw_${table.name} r WHERE ${reasonSql(column)} IS NOT NULL`,
  );
  const usable = table.columns
    .filter((column) => column.holdsRow)
    .map((column) => `${reasonSql(column)} IS NULL`);
  return `INSERT INTO problems ${faults.join('\n    UNION ALL ')};
    CREATE TABLE ${table.name} AS SELECT row_number() OVER (ORDER BY r.rowid)::INTEGER AS id, r.file, r.line, r.value_column,
      ${typed}
    FROM raw_${table.name} r WHERE ${usable.length === 0 ? 'true' : usable.join(' AND ')};`;
}

/** In a wide sheet the value stands under a column of its own name. */
function columnNameSql(column: Column): string {
  return column.name === 'value' ? `coalesce(r.value_column, 'value')` : quoted(column.name);
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
