import { canonicalTable } from '../../lib/records/canonicalTables';
import { writeCsv } from '../../lib/records/csv/writeCsv';
import type { EditedTable } from '../../lib/records/decisions/editedTables';
import type { RowTexts } from '../../lib/records/decisions/tableEdits';

/** Rows of a table as its canonical CSV file, to be changed and read again: each text as it stands. */
export function tableCsv(table: EditedTable, rows: readonly RowTexts[]): string {
  const header = canonicalTable(table).columns.map(({ name }) => name);
  return writeCsv(
    header,
    rows.map((texts) => header.map((name) => texts[name] ?? '')),
  );
}
