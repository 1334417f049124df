import type { CanonicalTable } from '../records/canonicalTables';
import type { CsvPiece, CutCsv } from '../records/csv/cutCsv';
import type { Connector } from './Connector';
import { cellSql, lastReadingId, loadTable, type TableFile, tableRowsSql } from './loadTable';
import { valueByRangeSql } from './sql/lineNumbers';
import { quoted } from './sql/quoted';

interface PlainPiece extends CsvPiece {
  readonly firstLine: number;
}

/** Files that are read together, and their bytes. */
interface Alike {
  readonly files: PlainFile[];
  length_bytes: number;
}

interface PlainFile extends TableFile {
  readonly pieces: readonly [PlainPiece, ...PlainPiece[]];
}

/**
 * Canonical files with nothing but plain lines, kept until others of the same columns have come, and then read by one statement:
 * each takes milliseconds by itself, and adding rows to a table that has some takes twice as long as making it.
 *
 * Files of one table are read in the order in which they came.
 */
export class PlainFiles {
  private waiting = new Map<string, Alike>();

  constructor(private readonly connector: Connector) {}

  /** Takes a file in, to be read later or at once if it is not plain; all that came before it are read first in that case. */
  async add(file: TableFile, onPiece: (share: number) => Promise<void>): Promise<void> {
    const pieces = plainPieces(file.csv);
    if (pieces === null) {
      await this.read();
      await loadTable(this.connector, file, onPiece);
      return;
    }
    const [{ delimiter, lineEnd }] = pieces;
    const kind = JSON.stringify([file.table.name, file.csv.header, delimiter, lineEnd]);
    const length = pieces.reduce((sum, { bytes }) => sum + bytes.length, 0);
    let alike = this.waiting.get(kind) ?? { files: [], length_bytes: 0 };
    if (alike.length_bytes + length > this.connector.textLength_bytes) {
      await this.readAlike(alike.files);
      alike = { files: [], length_bytes: 0 };
    }
    alike.files.push({ ...file, pieces });
    alike.length_bytes += length;
    this.waiting.set(kind, alike);
  }

  /** Reads all that wait. */
  async read(): Promise<void> {
    const waiting = this.waiting;
    this.waiting = new Map();
    for (const { files } of waiting.values()) await this.readAlike(files);
  }

  private async readAlike(files: readonly PlainFile[]): Promise<void> {
    const [first] = files;
    if (first === undefined) return;
    if (files.length === 1) return loadTable(this.connector, first, async () => {});
    const { table, csv, pieces } = first;
    const [{ delimiter, lineEnd }] = pieces;
    const idBefore = await lastReadingId(this.connector, table);
    await this.connector.runOnText(
      { bytes: files.flatMap((file) => file.pieces.map(({ bytes }) => bytes)), delimiter, lineEnd },
      csv.header.map((_, index) => `c${index}`),
      (rows) => togetherSql(table, csv.header, files, idBefore, rows),
    );
  }
}

/** Statement that adds the rows of a text of all files, each with its file and line. */
function togetherSql(
  table: CanonicalTable,
  header: readonly string[],
  files: readonly PlainFile[],
  idBefore: number,
  rows: string,
): string {
  let [lastRow, lastId] = [0, idBefore];
  const ranges = files.map(({ name, csv, pieces }) => {
    const [{ firstLine }] = pieces;
    const range = {
      file: quoted(name),
      line: firstLine - lastRow - 1,
      id: lastId + firstLine - lastRow - 1,
      lastRow: lastRow + csv.records,
    };
    lastId += firstLine + csv.records;
    lastRow = range.lastRow;
    return range;
  });
  const byFile = (what: 'file' | 'line' | 'id') =>
    valueByRangeSql(ranges.map((range) => ({ lastRow: range.lastRow, value: range[what] })));
  const cells = header.map((_, index) => `c${index}`).join(', ');
  return tableRowsSql(table, cellSql(header, true), {
    from: `(SELECT ${byFile('file')} AS file_name, (row_number + ${byFile('line')})::INTEGER AS line_number,
        (row_number + ${byFile('id')})::INTEGER AS row_id, ${cells} FROM (SELECT row_number() OVER () AS row_number, ${cells} FROM ${rows}))`,
    file: 'file_name',
    id: 'row_id',
    isTidy: true,
  });
}

function plainPieces({ pieces }: CutCsv): readonly [PlainPiece, ...PlainPiece[]] | null {
  const plain = pieces.filter((piece): piece is PlainPiece => piece.firstLine !== null);
  const [first, ...further] = plain;
  const isPlain =
    plain.length === pieces.length && further.every(({ lineEnd }) => lineEnd === first?.lineEnd);
  return first !== undefined && isPlain ? [first, ...further] : null;
}
