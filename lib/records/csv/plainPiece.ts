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
  let lines = 0;
  let carriageReturns = 0;
  let cells = 1;
  let lineStart = start;
  let before = delimiter;
  for (let at = start; at < last; at++) {
    const byte = bytes[at] as number;
    if (byte === delimiter) {
      if (before === space || before === cr) return null;
      cells++;
    } else if (byte === lf) {
      const end = before === cr ? at - 1 : at;
      // A line of delimiters alone is blank.
      if (cells !== columns || end - lineStart < columns || bytes[end - 1] === space) return null;
      if (end - lineStart > longest_bytes) return null;
      lines++;
      if (before === cr) carriageReturns++;
      cells = 1;
      lineStart = at + 1;
      before = delimiter;
      continue;
    } else if (byte === space) {
      if (before === delimiter || before === cr) return null;
    } else if (byte === quote || byte === fieldSeparator || byte === lineBreakInCell) return null;
    else if (before === cr) return null;
    else if (byte === apostrophe && before === delimiter && isMarkedCell(bytes, at, delimiter)) return null;
    before = byte;
  }
  return carriageReturns === 0 || carriageReturns === lines
    ? { end: last, lines, lineEnd: carriageReturns === 0 ? '\n' : '\r\n' }
    : null;
}
