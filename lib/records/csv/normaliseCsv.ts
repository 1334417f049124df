import { fieldSeparator, lineBreakInCell, RecordReader } from './recordReader';

/** A line that could not be cut into cells. */
export interface HeldLine {
  readonly row: number;
  readonly raw: string;
  readonly reason: string;
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

function rawText(bytes: Uint8Array): string {
  const cut = decoder
    .decode(bytes.subarray(0, longestRaw * 4))
    .replaceAll('\u001f', ' | ')
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

function byteOrderMark(bytes: Uint8Array): number {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
}

/**
 * Cuts CSV bytes (UTF-8) into cells with their line numbers, the first line with something in it as header.
 *
 * Blank lines are passed over, short lines are filled up with empty cells, and a line with more cells than the header
 * (an unquoted delimiter, usually), with an unclosed quote, or of over 256 KiB is held with its reason.
 */
export function normaliseCsv(bytes: Uint8Array, delimiter: string): NormalisedCsv {
  const reader = new RecordReader(bytes, delimiter.charCodeAt(0), byteOrderMark(bytes));
  let header: readonly string[] = [];
  while (!reader.atEnd && header.length === 0) {
    reader.outputLength = 0;
    reader.read();
    if (!reader.isBlank) header = headerNames(reader);
  }
  return { header, ...cutRecords(reader, header.length) };
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
  const reader = new RecordReader(bytes, delimiter.charCodeAt(0), byteOrderMark(bytes));
  while (!reader.atEnd && reader.line < firstBodyLine) {
    reader.outputLength = 0;
    reader.read();
  }
  return { header: columns, ...cutRecords(reader, columns.length) };
}

function cutRecords(reader: RecordReader, columns: number): Omit<NormalisedCsv, 'header'> {
  reader.outputLength = 0;
  const held: HeldLine[] = [];
  let records = 0;
  let rowsIn = 0;
  while (!reader.atEnd) {
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
      held.push({ row, raw: rawText(reader.output.subarray(cellsStart, reader.outputLength)), reason });
      reader.outputLength = recordStart;
      continue;
    }
    for (let missing = reader.fieldCount; missing < columns; missing++) reader.push(fieldSeparator);
    reader.push(lf);
    records++;
  }
  return { body: reader.output.subarray(0, reader.outputLength), records, rowsIn, held };
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
