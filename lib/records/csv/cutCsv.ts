import { afterHeader, atLine, cutRecords, type HeldLine } from './normaliseCsv';
import { plainPiece } from './plainPiece';
import { fieldSeparator, longestRecord_bytes, type RecordReader } from './recordReader';

/** Bytes cut at a time: little enough for others to get their turn between two pieces. */
const piece_bytes = 4_000_000;

/** Some whole lines of a file, to be read as text with the dialect given and no quoting. */
export interface CsvPiece {
  readonly bytes: Uint8Array;
  readonly delimiter: string;
  readonly lineEnd: '\n' | '\r\n';
  readonly records: number;
  /**
   * Line of the first record where every line is a record of the file's own bytes, its cells without spaces around them;
   * null where each record starts with its line number in a cell of its own.
   */
  readonly firstLine: number | null;
}

/** A CSV file cut into cells, in pieces. */
export interface CutCsv {
  readonly header: readonly string[];
  readonly pieces: readonly CsvPiece[];
  readonly records: number;
  /** Lines with something in them under the header, held ones included. */
  readonly rowsIn: number;
  readonly held: readonly HeldLine[];
}

/** Called between two pieces with the share of the file that is cut; throws to stop. */
export type OnPiece = (share: number) => Promise<void>;

/** Cuts a file as normaliseCsv does, in pieces; plain lines are left as they are, since they need no cutting. */
export function cutCsv(bytes: Uint8Array, delimiter: string, onPiece: OnPiece): Promise<CutCsv> {
  const { reader, header } = afterHeader(bytes, delimiter);
  return cutInPieces(bytes, delimiter, reader, header, onPiece);
}

/** Cuts a sheet from `firstBodyLine` on as normaliseBody does, in pieces. */
export function cutBody(
  bytes: Uint8Array,
  delimiter: string,
  firstBodyLine: number,
  columns: readonly string[],
  onPiece: OnPiece,
): Promise<CutCsv> {
  return cutInPieces(bytes, delimiter, atLine(bytes, delimiter, firstBodyLine), columns, onPiece);
}

async function cutInPieces(
  bytes: Uint8Array,
  delimiter: string,
  reader: RecordReader,
  header: readonly string[],
  onPiece: OnPiece,
): Promise<CutCsv> {
  const pieces: CsvPiece[] = [];
  const held: HeldLine[] = [];
  let records = 0;
  let rowsIn = 0;
  const columns = header.length;
  while (!reader.atEnd) {
    const start = reader.position;
    const firstLine = reader.line;
    const plain = plainPiece(
      bytes,
      start,
      piece_bytes,
      delimiter.charCodeAt(0),
      columns,
      longestRecord_bytes,
    );
    if (plain === null) {
      const cut = cutRecords(reader, columns, start + piece_bytes);
      // One by one: a piece of short lines can hold more of them than a call takes arguments.
      for (const line of cut.held) held.push(line);
      rowsIn += cut.rowsIn;
      records += cut.records;
      if (cut.records > 0)
        pieces.push({
          bytes: cut.body.slice(),
          delimiter: String.fromCharCode(fieldSeparator),
          lineEnd: '\n',
          records: cut.records,
          firstLine: null,
        });
    } else {
      reader.moveTo(plain.end, firstLine + plain.lines);
      rowsIn += plain.lines;
      records += plain.lines;
      pieces.push({
        bytes: bytes.subarray(start, plain.end),
        delimiter,
        lineEnd: plain.lineEnd,
        records: plain.lines,
        firstLine,
      });
    }
    await onPiece(reader.position / bytes.length);
  }
  return { header, pieces, records, rowsIn, held };
}
