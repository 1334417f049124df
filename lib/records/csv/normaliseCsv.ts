import { fieldSeparator, lineBreakInCell, RecordReader } from './recordReader';

/** A line that could not be cut into cells. */
export interface HeldLine {
  readonly row: number;
  readonly raw: string;
  readonly reason: string;
  /** Positions of the cells with something in them, as far as the line could be cut. */
  readonly filled: readonly number[];
}

/** A CSV file cut into cells, ready to be read as text with an explicit dialect. */
export interface NormalisedCsv {
  readonly header: readonly string[];
  /** Records of `line number, cells...`, fields parted by 0x1F, records by LF; held lines are left out. */
  readonly body: Uint8Array;
  /** Records in the body. */
  readonly records: number;
  /** Lines with something in them under the header, held ones included. */
  readonly rowsIn: number;
  readonly held: readonly HeldLine[];
}

const lf = 0x0a;
const decoder = new TextDecoder();
const longestRaw = 200;
/** What parts the cells of a line where it is shown. */
export const cellsApart = ' | ';

function rawText(bytes: Uint8Array): string {
  const cut = decoder
    .decode(bytes.subarray(0, longestRaw * 4))
    .replaceAll('\u001f', cellsApart)
    .replaceAll('\u001e', ' ');
  return cut.length > longestRaw ? `${cut.slice(0, longestRaw)}…` : cut;
}

/** Names in the first record of the file; empty where there is none. */
export function readHeader(bytes: Uint8Array, delimiter: string): readonly string[] {
  const reader = new RecordReader(bytes.subarray(0, 300_000), delimiter.charCodeAt(0), byteOrderMark(bytes));
  while (!reader.atEnd) {
    reader.outputLength = 0;
    reader.read();
    if (!reader.isBlank) return headerNames(reader);
  }
  return [];
}

function headerNames(reader: RecordReader): readonly string[] {
  return decoder
    .decode(reader.output.subarray(0, reader.outputLength))
    .split(String.fromCharCode(fieldSeparator))
    .map((name) => name.replaceAll(String.fromCharCode(lineBreakInCell), ' ').trim());
}

/** Length of the byte order mark at the start of the bytes, 0 without one. */
export function byteOrderMark(bytes: Uint8Array): number {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
}

/**
 * Cuts CSV bytes (UTF-8) into cells with their line numbers, the first line with something in it as header.
 *
 * Blank lines are passed over, short lines are filled up with empty cells, and a line with more cells than the header
 * (an unquoted delimiter, usually), with an unclosed quote, or of over 256 KiB is held with its reason. The apostrophe that
 * writeCsv puts before what a spreadsheet would compute is taken off.
 */
export function normaliseCsv(bytes: Uint8Array, delimiter: string): NormalisedCsv {
  const { reader, header } = afterHeader(bytes, delimiter);
  return { header, ...cutRecords(reader, header.length) };
}

/** A reader of a file with canonical names that stands after the first line with something in it, and the names in that line. */
export function afterHeader(
  bytes: Uint8Array,
  delimiter: string,
): { readonly reader: RecordReader; readonly header: readonly string[] } {
  const reader = new RecordReader(bytes, delimiter.charCodeAt(0), byteOrderMark(bytes), true);
  let header: readonly string[] = [];
  while (!reader.atEnd && header.length === 0) {
    reader.outputLength = 0;
    reader.read();
    if (!reader.isBlank) header = headerNames(reader);
  }
  return { reader, header };
}

/**
 * Cuts the lines of a sheet from `firstBodyLine` on into cells, as normaliseCsv does, for a header that was told otherwise.
 *
 * @param columns names of the columns; their number is that of the cells a line may have
 */
export function normaliseBody(
  bytes: Uint8Array,
  delimiter: string,
  firstBodyLine: number,
  columns: readonly string[],
): NormalisedCsv {
  return { header: columns, ...cutRecords(atLine(bytes, delimiter, firstBodyLine), columns.length) };
}

/** A reader that stands before the first record of that line or after it. */
export function atLine(bytes: Uint8Array, delimiter: string, line: number): RecordReader {
  const reader = new RecordReader(bytes, delimiter.charCodeAt(0), byteOrderMark(bytes));
  while (!reader.atEnd && reader.line < line) {
    reader.outputLength = 0;
    reader.read();
  }
  return reader;
}

/** Cuts the records that start before byte `until` into cells, from where the reader stands. */
export function cutRecords(
  reader: RecordReader,
  columns: number,
  until = Number.POSITIVE_INFINITY,
): Omit<NormalisedCsv, 'header'> {
  reader.outputLength = 0;
  const held: HeldLine[] = [];
  let records = 0;
  let rowsIn = 0;
  while (!reader.atEnd && reader.position < until) {
    const recordStart = reader.outputLength;
    const row = reader.line;
    for (const digit of String(row)) reader.push(digit.charCodeAt(0));
    reader.push(fieldSeparator);
    const cellsStart = reader.outputLength;
    reader.read();
    if (reader.isBlank) {
      reader.outputLength = recordStart;
      continue;
    }
    rowsIn++;
    const reason = faultOf(reader, cellsStart, columns);
    if (reason !== null) {
      const cells = reader.output.subarray(cellsStart, reader.outputLength);
      held.push({ row, raw: rawText(cells), reason, filled: filledCells(cells) });
      reader.outputLength = recordStart;
      continue;
    }
    for (let missing = reader.fieldCount; missing < columns; missing++) reader.push(fieldSeparator);
    reader.push(lf);
    records++;
  }
  return { body: reader.output.subarray(0, reader.outputLength), records, rowsIn, held };
}

function filledCells(cells: Uint8Array): readonly number[] {
  const filled: number[] = [];
  let position = 0;
  for (const byte of cells) {
    if (byte === fieldSeparator) position++;
    else if (byte !== 0x20 && filled.at(-1) !== position) filled.push(position);
  }
  return filled;
}

/** Why the record read last is held, or null; empty cells past the header are cut off. */
function faultOf(reader: RecordReader, cellsStart: number, headerCells: number): string | null {
  if (reader.fault === 'too long') return 'the line is longer than 256 KiB: not a row of an overhaul sheet';
  if (reader.fault === 'unclosed quote')
    return 'a quotation mark is opened and not closed: close or remove it';
  if (reader.fieldCount <= headerCells) return null;
  let separators = 0;
  let end = cellsStart;
  for (; end < reader.outputLength; end++) {
    if (reader.output[end] === fieldSeparator && ++separators === headerCells) break;
  }
  const surplus = reader.output.subarray(end, reader.outputLength);
  if (surplus.some((byte) => byte !== fieldSeparator && byte !== 0x20)) {
    return `the line has ${reader.fieldCount} cells where the header has ${headerCells}: put cells that contain the delimiter in quotation marks`;
  }
  reader.outputLength = end;
  return null;
}
