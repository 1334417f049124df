import type { CsvPiece, CutCsv, OnPiece } from '../records/csv/cutCsv';
import type { Connector } from './Connector';
import { type NumberedRows, numberLinesSql } from './sql/lineNumbers';

/** From so many rows on lines are counted once all rows are there: counting while reading keeps to one thread. */
const manyRows = 20_000;

/** How the rows of a piece are to be read. */
export interface PieceRows {
  /** SQL for FROM: `line_number` and c0, c1, ... as text. */
  readonly from: string;
  /** The cells are the file's own, without spaces around them. */
  readonly isTidy: boolean;
}

/**
 * Calls for each piece of a cut file with its rows.
 *
 * @param mayCountLater large pieces may come with `line_number` NULL
 * @returns the rows that have no line number, by their place among all rows of the file
 */
export async function forEachPiece(
  connector: Connector,
  csv: CutCsv,
  statements: (rows: PieceRows) => string,
  onPiece: OnPiece,
  mayCountLater: boolean,
): Promise<readonly NumberedRows[]> {
  const cells = csv.header.map((_, index) => `c${index}`);
  const uncounted: NumberedRows[] = [];
  let loaded = 0;
  for (const piece of joinedPieces(csv.pieces, connector.textLength_bytes)) {
    const { firstLine, records } = piece;
    const isTidy = firstLine !== null;
    const columns = isTidy ? cells : ['line', ...cells];
    let line = 'line::INTEGER';
    if (firstLine !== null && mayCountLater && records >= manyRows) {
      line = 'NULL::INTEGER';
      uncounted.push({ rowsBefore: loaded, rows: records, firstLine });
    } else if (firstLine !== null) line = `(row_number() OVER () + ${firstLine - 1})::INTEGER`;
    await connector.runOnText({ ...piece, bytes: [piece.bytes] }, columns, (rows) =>
      statements({ from: `(SELECT ${line} AS line_number, ${cells.join(', ')} FROM ${rows})`, isTidy }),
    );
    loaded += records;
    await onPiece(loaded / csv.records);
  }
  return uncounted;
}

/** Pieces that follow one another in the same bytes and are read alike, put together up to a length. */
function joinedPieces(pieces: readonly CsvPiece[], most_bytes: number): readonly CsvPiece[] {
  const joined: CsvPiece[] = [];
  for (const piece of pieces) {
    const before = joined.at(-1);
    if (before === undefined || !isContinued(before, piece, most_bytes)) {
      joined.push(piece);
      continue;
    }
    const { buffer, byteOffset, length } = before.bytes;
    const bytes = new Uint8Array(buffer, byteOffset, length + piece.bytes.length);
    joined[joined.length - 1] = { ...before, bytes, records: before.records + piece.records };
  }
  return joined;
}

function isContinued(before: CsvPiece, piece: CsvPiece, most_bytes: number): boolean {
  return (
    before.firstLine !== null &&
    piece.firstLine === before.firstLine + before.records &&
    piece.lineEnd === before.lineEnd &&
    piece.bytes.buffer === before.bytes.buffer &&
    piece.bytes.byteOffset === before.bytes.byteOffset + before.bytes.length &&
    before.bytes.length + piece.bytes.length <= most_bytes
  );
}

/** Makes a table of all rows of a cut file, the line first. */
export async function loadPieces(
  connector: Connector,
  table: string,
  lineColumn: string,
  csv: CutCsv,
  onPiece: OnPiece,
): Promise<void> {
  const cells = csv.header.map((_, index) => `c${index} VARCHAR`);
  await connector.run(`CREATE TABLE ${table} (${[`${lineColumn} INTEGER`, ...cells].join(', ')})`);
  const uncounted = await forEachPiece(
    connector,
    csv,
    ({ from }) => `INSERT INTO ${table} SELECT * FROM ${from}`,
    onPiece,
    true,
  );
  if (uncounted.length > 0) await connector.run(numberLinesSql(table, lineColumn, uncounted));
}
