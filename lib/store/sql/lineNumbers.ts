/** Rows of a table that stand one after another, each a line of its file, and have no line number yet. */
export interface NumberedRows {
  /** Rows of the table before them. */
  readonly rowsBefore: number;
  readonly rows: number;
  /** Line of the first of them. */
  readonly firstLine: number;
}

/** Statement that numbers the rows of a table from 1 in the order in which they came in, in the column `row_number`. */
export function numberRowsSql(table: string): string {
  return `CREATE SEQUENCE rows_of_${table}; ALTER TABLE ${table} ADD COLUMN row_number INTEGER DEFAULT nextval('rows_of_${table}');`;
}

/** Statement that drops those numbers again. */
export function dropRowNumbersSql(table: string): string {
  return `ALTER TABLE ${table} DROP COLUMN row_number; DROP SEQUENCE rows_of_${table};`;
}

/** SQL expression on a numbered row: the value, itself SQL, of the first range that its number falls into. */
export function valueByRangeSql(
  ranges: readonly { readonly lastRow: number; readonly value: number | string }[],
): string {
  const cases = ranges
    .filter(({ value }, index) => value !== ranges[index + 1]?.value)
    .map(({ lastRow, value }) => `WHEN row_number <= ${lastRow} THEN ${value}`);
  return `CASE ${cases.join(' ')} END`;
}

/** Statements that give rows without a line number theirs. */
export function numberLinesSql(table: string, column: string, rows: readonly NumberedRows[]): string {
  const ranges = rows.map(({ rowsBefore, rows, firstLine }) => ({
    lastRow: rowsBefore + rows,
    value: firstLine - rowsBefore - 1,
  }));
  return `${numberRowsSql(table)}
    ALTER TABLE ${table} ALTER ${column} TYPE INTEGER USING coalesce(${column}, row_number + ${valueByRangeSql(ranges)});
    ${dropRowNumbersSql(table)}`;
}
