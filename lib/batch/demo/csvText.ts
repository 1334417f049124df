import { writeCsv } from '../../records/csv/writeCsv';

/** One row of a table: column name to the text of the cell. */
export type TextRow = Readonly<Record<string, string>>;

/** Canonical CSV text of rows given by column name; a column that a row does not name is empty there. */
export function csvText(columns: readonly string[], rows: readonly TextRow[]): string {
  return writeCsv(
    columns,
    rows.map((row) => columns.map((column) => row[column] ?? '')),
  );
}
