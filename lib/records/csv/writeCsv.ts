import { csvFormatRows } from 'd3-dsv';
import { forSpreadsheet } from './spreadsheetText';

type Cell = string | number | boolean | null;

/**
 * CSV text (RFC 4180, comma, decimal point) of a table; empty where a value is null. A text that a spreadsheet would compute
 * starts with an apostrophe, which is taken off where such a file is read.
 *
 * @throws Error if a number is not finite: such a value must not reach a file
 */
export function writeCsv(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return csvLines([header, ...rows]);
}

/** Lines of such a text without a header, for tables that are written piece by piece; '' for no row. */
export function csvLines(rows: readonly (readonly Cell[])[]): string {
  return rows.length === 0 ? '' : `${csvFormatRows(rows.map((row) => row.map(cellText)))}\n`;
}

function cellText(value: Cell): string {
  if (value === null) return '';
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Error(`writeCsv requires finite numbers, got ${value}`);
  return typeof value === 'string' ? forSpreadsheet(value) : String(value);
}
