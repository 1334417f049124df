import { isMarkedCell } from './spreadsheetText';

const lf = 0x0a;
const cr = 0x0d;
const quote = 0x22;
const space = 0x20;
const apostrophe = 0x27;
const fieldSeparator = 0x1f;
const lineBreakInCell = 0x1e;

/** Lines that hold nothing but cells and their delimiters, so that they need no cutting of our own. */
export interface PlainLines {
  /** Byte after the last line. */
  readonly end: number;
  readonly lines: number;
  readonly lineEnd: '\n' | '\r\n';
}

/**
 * Looks whether all whole lines of a piece are plain: no quotation mark, one kind of line end, as many cells as there are
 * columns, no space beside a delimiter or line end, no cell marked for spreadsheets, no blank line, none over the longest; null
 * if a single one is not.
 *
 * @param longest_bytes longest line that may be a record
 */
export function plainPiece(
  bytes: Uint8Array,
  start: number,
  most_bytes: number,
  delimiter: number,
  columns: number,
  longest_bytes: number,
): PlainLines | null {
  const last = bytes.lastIndexOf(lf, Math.min(bytes.length, start + most_bytes) - 1) + 1;
  if (last <= start) return null;
  const kinds = kindsOfBytes(delimiter);
  let lines = 0;
  let carriageReturns = 0;
  let cells = 1;
  let lineStart = start;
  for (let at = start; at < last; at++) {
    // Nearly all bytes are ordinary, and the last one never is.
    while (kinds[bytes[at] as number] === ordinary) at++;
    const byte = bytes[at] as number;
    if (byte === delimiter) cells++;
    else if (byte === lf) {
      const end = at > lineStart && bytes[at - 1] === cr ? at - 1 : at;
      // A line of delimiters alone is blank.
      if (cells !== columns || end - lineStart < columns || end - lineStart > longest_bytes) return null;
      lines++;
      if (end < at) carriageReturns++;
      cells = 1;
      lineStart = at + 1;
    } else if (byte === cr) {
      if (bytes[at + 1] !== lf) return null;
    } else if (byte === space) {
      const after = bytes[at + 1];
      if (
        isFirstOfCell(bytes, at, lineStart, delimiter) ||
        after === delimiter ||
        after === lf ||
        after === cr
      )
        return null;
    } else if (byte === apostrophe) {
      if (isFirstOfCell(bytes, at, lineStart, delimiter) && isMarkedCell(bytes, at, delimiter)) return null;
    } else return null;
  }
  return carriageReturns === 0 || carriageReturns === lines
    ? { end: last, lines, lineEnd: carriageReturns === 0 ? '\n' : '\r\n' }
    : null;
}

const ordinary = 0;

/** For each value of a byte whether it is part of a cell wherever it stands. */
function kindsOfBytes(delimiter: number): Uint8Array {
  const kinds = new Uint8Array(256);
  for (const byte of [lf, cr, quote, space, apostrophe, fieldSeparator, lineBreakInCell, delimiter])
    kinds[byte] = 1;
  return kinds;
}

function isFirstOfCell(bytes: Uint8Array, at: number, lineStart: number, delimiter: number): boolean {
  return at === lineStart || bytes[at - 1] === delimiter;
}
