import { canonicalTable, type TableName } from '../canonicalTables';
import { writeCsv } from './writeCsv';

/** Rows of a canonical table as its CSV file, columns in their order; what a row does not name is empty. */
export function canonicalCsv(
  table: TableName,
  rows: readonly Readonly<Record<string, string | number | null>>[],
): string {
  const header = canonicalTable(table).columns.map(({ name }) => name);
  return writeCsv(
    header,
    rows.map((row) => header.map((name) => row[name] ?? null)),
  );
}
