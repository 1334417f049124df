import { forSpreadsheet } from './spreadsheetText';

type Cell = string | number | null;

/** A table for the clipboard: text parted by tabs, and the same as an HTML table. */
export interface PastedTable {
  readonly text: string;
  readonly html: string;
}

const notInACell = /[\t\r\n]+/g;
const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/**
 * A table as spreadsheets take it when pasted: one line a row, cells parted by tabs, tabs and line ends inside a cell as
 * spaces; a text that a spreadsheet would compute gets an apostrophe before it, as in writeCsv.
 *
 * @param decimal the sign before decimals that the spreadsheet reads
 * @throws Error if a number is not finite
 */
export function pastedTable(
  header: readonly string[],
  rows: readonly (readonly Cell[])[],
  decimal: '.' | ',',
): PastedTable {
  const lines = rows.map((row) => row.map((cell) => cellText(cell, decimal)));
  const head = header.map((name) => cellText(name, decimal));
  const html = (cells: readonly string[], tag: 'th' | 'td') =>
    `<tr>${cells.map((cell) => `<${tag}>${cell.replace(/[&<>"]/g, (sign) => escapes[sign] ?? '')}</${tag}>`).join('')}</tr>`;
  return {
    text: [head, ...lines].map((cells) => `${cells.join('\t')}\n`).join(''),
    html: `<table>${html(head, 'th')}${lines.map((cells) => html(cells, 'td')).join('')}</table>`,
  };
}

function cellText(value: Cell, decimal: '.' | ','): string {
  if (value === null) return '';
  if (typeof value === 'string') return forSpreadsheet(value).replace(notInACell, ' ');
  if (!Number.isFinite(value)) throw new Error(`pastedTable requires finite numbers, got ${value}`);
  return String(value).replace('.', decimal);
}
