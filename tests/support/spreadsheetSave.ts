import { csvParseRows, dsvFormat } from 'd3-dsv';

/** How a spreadsheet saves a table: its delimiter, decimal sign, line ends and encoding. */
export interface SpreadsheetHabits {
  readonly delimiter: ',' | ';' | '\t';
  readonly decimalComma: boolean;
  readonly encoding: 'utf-8' | 'utf-8 with mark' | 'utf-16le' | 'latin1';
}

/** Numbers as a spreadsheet writes them again: leading and trailing zeros lost, decimal sign of the place. */
function writtenAgain(text: string, decimalComma: boolean): string {
  if (!/^-?\d+(\.\d+)?$/.test(text)) return text;
  const number = String(Number(text));
  return decimalComma ? number.replace('.', ',') : number;
}

/**
 * A CSV as it comes back from a spreadsheet in which cells of some lines were filled in: every number written anew, a column
 * added, every second cell quoted.
 *
 * @param filled cells by line of the file (from 2) and column
 */
export function spreadsheetSave(
  csv: string,
  filled: Readonly<Record<number, Readonly<Record<string, string>>>>,
  { delimiter, decimalComma, encoding }: SpreadsheetHabits,
): Uint8Array {
  const [header = [], ...rows] = csvParseRows(csv.replace(/^\uFEFF/, ''));
  const table = [
    [...header, 'checked'],
    ...rows.map((row, index) => [
      ...header.map((name, at) => filled[index + 2]?.[name] ?? writtenAgain(row[at] ?? '', decimalComma)),
      '',
    ]),
  ];
  const text = dsvFormat(delimiter).formatRows(table).split('\n').join('\r\n');
  if (encoding === 'utf-16le') return new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le'));
  if (encoding === 'latin1') return new Uint8Array(Buffer.from(text, 'latin1'));
  return new Uint8Array(Buffer.from(encoding === 'utf-8' ? text : `\uFEFF${text}`, 'utf8'));
}
