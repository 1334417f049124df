/** First characters of a cell that a spreadsheet would compute or swallow, and our own mark against it. */
const computed = /^['=+\-@\t\r\n]/;
const marked = /^'(?=['=+\-@\t\r\n])/;

/** A cell as text for a spreadsheet: an apostrophe before what it would take for a formula. */
export function forSpreadsheet(text: string): string {
  return computed.test(text) ? `'${text}` : text;
}

/** The text that forSpreadsheet was given. */
export function fromSpreadsheet(text: string): string {
  return text.replace(marked, '');
}
