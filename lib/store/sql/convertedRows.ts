import type { CanonicalTable } from '../../records/canonicalTables';
import { type Column, datePattern, firstYear, lastYear, numberPattern } from '../../records/columns';
import { quoted } from './quoted';

/** Type of a column in the typed table; the few words of a long table are kept as their numbers, in order of text. */
export function typeOf(table: CanonicalTable, column: Column): string {
  if (column.kind === 'number') return 'DOUBLE';
  if (column.kind === 'date') return 'DATE';
  return isCoded(table, column) ? `${table.name}_${column.name}` : 'VARCHAR';
}

/** Whether the texts of a column are few enough, and its table long enough, for a type of their own. */
function isCoded(table: CanonicalTable, column: Column): boolean {
  return table.name === 'readings' && (column.kind === 'choice' || column.name === 'characteristic');
}

/** Statements that make the types of the readings' words: choices as their schema has them, and the given codes. */
export function wordTypesSql(table: CanonicalTable, codes: Iterable<string>): string {
  return table.columns
    .filter((column) => isCoded(table, column))
    .map((column) => {
      const words = [...new Set(column.kind === 'choice' ? column.choices : codes)].sort();
      return `CREATE TYPE ${typeOf(table, column)} AS ENUM (${words.map(quoted).join(', ')});`;
    })
    .join('\n');
}

/** Type of the list of what cannot be read in a row; `holds` where the row cannot do without it. */
export const faultsType = 'STRUCT(column_name VARCHAR, raw VARCHAR, reason VARCHAR, holds BOOLEAN)[]';

/** The cell as its kind reads it, from the trimmed text; NULL where that is not possible. */
function valueSql(table: CanonicalTable, column: Column): string {
  const cell = `"${column.name}"`;
  if (isCoded(table, column)) {
    const type = typeOf(table, column);
    const asWritten = `try_cast(${cell} AS ${type})`;
    return column.kind === 'choice'
      ? `coalesce(${asWritten}, try_cast(lower(${cell}) AS ${type}))`
      : asWritten;
  }
  if (column.kind === 'number')
    return `CASE WHEN regexp_full_match(${cell}, '${numberPattern}') THEN try_cast(${cell} AS DOUBLE) END`;
  if (column.kind === 'date')
    return `CASE WHEN regexp_full_match(${cell}, '${datePattern}') THEN try_cast(${cell} AS DATE) END`;
  return `lower(${cell})`;
}

/** Condition that a value lies within what the column allows, or null where all values do. */
function withinSql(column: Column): string | null {
  const value = `"${column.name} value"`;
  if (column.kind === 'choice') return `${value} IN (${(column.choices ?? []).map(quoted).join(', ')})`;
  if (column.kind === 'date')
    return `${value} BETWEEN DATE '${firstYear}-01-01' AND DATE '${lastYear}-12-31'`;
  const bounds = [
    ...(column.min === undefined ? [] : [`${value} >= ${column.min}`]),
    ...(column.max === undefined ? [] : [`${value} <= ${column.max}`]),
  ];
  return bounds.length === 0 ? null : bounds.join(' AND ');
}

/** Free text is used as it stands; only the other kinds have a value of their own. */
function isRead({ kind }: Column): boolean {
  return kind === 'number' || kind === 'date' || kind === 'choice';
}

function usedSql(table: CanonicalTable, column: Column): string {
  if (isCoded(table, column)) return `"${column.name} value"`;
  if (!isRead(column)) return `"${column.name}"`;
  const within = withinSql(column);
  return within === null ? `"${column.name} value"` : `CASE WHEN ${within} THEN "${column.name} value" END`;
}

/** Condition that a cell cannot be used, or null where every cell can. */
function faultSql(column: Column): string | null {
  if (column.required) return `"${isRead(column) ? `${column.name} used` : column.name}" IS NULL`;
  return isRead(column) ? `("${column.name}" IS NOT NULL AND "${column.name} used" IS NULL)` : null;
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
    const within = withinSql(column);
    if (within !== null)
      when(`NOT (${within})`, `outside ${column.min ?? 'any'} to ${column.max ?? 'any'}${unit}`);
  }
  if (column.kind === 'date') {
    when(`${cell} IS NOT NULL AND ${value} IS NULL`, 'not a day of the calendar (YYYY-MM-DD is expected)');
    when(`NOT (${withinSql(column)})`, `the year is outside ${firstYear} to ${lastYear}`);
  }
  if (column.kind === 'choice')
    when(
      `${cell} IS NOT NULL AND "${column.name} used" IS NULL`,
      `not one of: ${(column.choices ?? []).join(', ')}`,
    );
  return `CASE ${cases.join(' ')} END`;
}

/** In a wide sheet the value stands under a column of its own name. */
function columnNameSql(column: Column): string {
  return column.name === 'value' ? `coalesce(value_column, 'value')` : quoted(column.name);
}

/** Text of a reading as it stands in its file: the value, or the ends of an interval. */
const readingTextSql = `coalesce(raw_text, CASE WHEN "lower raw" IS NULL AND "upper raw" IS NULL THEN "value raw" ELSE concat_ws(' to ', "value raw", "lower raw", "upper raw") END)`;

/** How text rows come in. */
export interface TextRows {
  /** SQL for FROM: file, line, value_column, raw_text and the table's columns as text. */
  readonly from: string;
  /** SQL expression of the id of a row. */
  readonly id: string;
  /** No cell has spaces around it and none is empty text. */
  readonly isTidy: boolean;
}

/**
 * Text rows of a table with every cell converted and checked: id, file, line, value_column, the columns (NULL where a cell
 * cannot be used) and `faults` with the reason for each such cell. Readings have the text that stands in their file, and that
 * of a characteristic which no file knows.
 */
export function convertedRowsSql(table: CanonicalTable, { from, id, isTidy }: TextRows): string {
  const { columns } = table;
  const rowColumns = 'file, line, value_column, raw_text';
  const tidy = ({ name }: Column) => (isTidy ? `"${name}"` : `nullif(trim("${name}"), '') AS "${name}"`);
  const raw = columns.map(({ name }) => `"${name}" AS "${name} raw"`);
  const read = columns
    .filter((column) => isRead(column) || isCoded(table, column))
    .map((column) => `${valueSql(table, column)} AS "${column.name} value"`);
  const used = columns.map((column) => `${usedSql(table, column)} AS "${column.name} used"`);
  const faulty = columns.flatMap((column) => {
    const fault = faultSql(column);
    return fault === null ? [] : [{ column, fault }];
  });
  const isFaulty = faulty.map(({ fault }) => fault).join(' OR ') || 'false';
  const listed = faulty.map(
    ({ column }) =>
      `{'column_name': ${columnNameSql(column)}, 'raw': coalesce(${column.name === 'value' ? 'raw_text, ' : ''}"${column.name} raw", ''), 'reason': ${reasonSql(column)}, 'holds': ${column.holdsRow}}`,
  );
  const own =
    table.name === 'readings'
      ? `${readingTextSql} AS raw_text, CASE WHEN "characteristic value" IS NULL THEN characteristic END AS unknown_characteristic, `
      : '';
  return `SELECT id, file, line, value_column, ${own}${columns.map(({ name }) => `"${name} used" AS "${name}"`).join(', ')},
      CASE WHEN ${isFaulty} THEN [${listed.join(', ')}] END AS faults
    FROM (SELECT *, ${used.join(', ')}
      FROM (SELECT *${read.map((one) => `, ${one}`).join('')}
        FROM (SELECT ${id} AS id, ${rowColumns}, ${[...raw, ...columns.map(tidy)].join(', ')} FROM ${from})))`;
}
