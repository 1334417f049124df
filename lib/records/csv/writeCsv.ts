import { csvFormatRows } from 'd3-dsv';
import { forSpreadsheet } from './spreadsheetText';

/**
 * CSV text (RFC 4180, comma, decimal point) of a table; empty where a value is null. A text that a spreadsheet would compute
 * starts with an apostrophe, which is taken off where such a file is read.
 *
 * @throws Error if a number is not finite: such a value must not reach a file
 */
export function writeCsv(
  header: readonly string[],
  rows: readonly (readonly (string | number | boolean | null)[])[],
): string {
  const lines = rows.map((row) => row.map(cellText));
  return `${csvFormatRows([header.map(cellText), ...lines])}\n`;
}

function cellText(value: string | number | boolean | null): string {
  if (value === null) return '';
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new Error(`writeCsv requires finite numbers, got ${value}`);
  return typeof value === 'string' ? forSpreadsheet(value) : String(value);
}
