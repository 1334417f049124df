import { writeCsv } from '../csv/writeCsv';
import type { Problem } from '../importReport';

/** Columns of the file of held rows: what is held and why, and three to be filled in a spreadsheet. */
export const heldRowsColumns = [
  'file',
  'line',
  'column',
  'raw',
  'reason',
  'corrected',
  'ruling',
  'why',
] as const;

/** Tells a spreadsheet that the text is UTF-8. */
const byteOrderMark = '\uFEFF';

/** The held rows and cells as CSV for a spreadsheet, to be corrected there and read back by readHeldRowsCsv. */
export function heldRowsCsv(problems: readonly Problem[]): string {
  const rows = problems
    .filter(({ action }) => action === 'held')
    .map(({ file, row, column, raw, reason }) => [file, row, column, raw, reason, '', '', '']);
  return byteOrderMark + writeCsv(heldRowsColumns, rows);
}
