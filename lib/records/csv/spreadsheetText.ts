/** A cell that a spreadsheet would compute or swallow, by its first character behind any apostrophes; full-width ones count. */
const computed = /^'*[=+\-@\t\r\n＝＋－＠]/;
const plainNumber = /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/;

const apostrophe = 0x27;
const computedBytes: readonly number[] = [...'=+-@\t\r\n'].map((character) => character.charCodeAt(0));
/** Last bytes of the full-width = + - @, after 0xEF 0xBC. */
const fullWidth: readonly number[] = [0x9d, 0x8b, 0x8d, 0xa0];

/** A cell as text for a spreadsheet: an apostrophe before what it would take for a formula; a plain number stays one. */
export function forSpreadsheet(text: string): string {
  return computed.test(text) && !plainNumber.test(text) ? `'${text}` : text;
}

/** The text that forSpreadsheet was given. */
export function fromSpreadsheet(text: string): string {
  return text.startsWith("'") && computed.test(text) ? text.slice(1) : text;
}

/**
 * Whether the cell whose bytes (UTF-8) start there carries the apostrophe of forSpreadsheet.
 *
 * @param delimiter byte that ends the cell; null in quotation marks, where every byte belongs to it
 */
export function isMarkedCell(bytes: Uint8Array, start: number, delimiter: number | null): boolean {
  if (bytes[start] !== apostrophe) return false;
  let at = start;
  while (bytes[at] === apostrophe) at++;
  const byte = bytes[at] as number;
  if (byte === 0xef) return bytes[at + 1] === 0xbc && fullWidth.includes(bytes[at + 2] as number);
  const isLineEnd = byte === 0x0d || byte === 0x0a;
  return computedBytes.includes(byte) && (delimiter === null || (byte !== delimiter && !isLineEnd));
}
