import type { CsvPiece, CutCsv, OnPiece } from '../records/csv/cutCsv';
import type { Connector } from './Connector';

/** Calls for each piece of a cut file with its rows: SQL for FROM with `line_number` and c0, c1, ... as text. */
export async function forEachPiece(
  connector: Connector,
  csv: CutCsv,
  statements: (rows: string, piece: CsvPiece) => string,
  onPiece: OnPiece,
): Promise<void> {
  const cells = csv.header.map((_, index) => `c${index}`);
  let loaded = 0;
  for (const piece of csv.pieces) {
    const { firstLine } = piece;
    const columns = firstLine === null ? ['line', ...cells] : cells;
    const line = firstLine === null ? 'line::INTEGER' : `(row_number() OVER () + ${firstLine - 1})::INTEGER`;
    await connector.runOnText(piece, columns, (rows) =>
      statements(`(SELECT ${line} AS line_number, ${cells.join(', ')} FROM ${rows})`, piece),
    );
    loaded += piece.records;
    await onPiece(loaded / csv.records);
  }
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
  await forEachPiece(connector, csv, (rows) => `INSERT INTO ${table} SELECT * FROM ${rows}`, onPiece);
}
