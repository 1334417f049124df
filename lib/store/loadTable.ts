import type { CanonicalTable } from '../records/canonicalTables';
import type { CutCsv, OnPiece } from '../records/csv/cutCsv';
import type { Connector } from './Connector';
import { forEachPiece, type PieceRows } from './loadPieces';
import { addReadingsSql, lastReadingIdSql } from './sql/checkedReadings';
import { quoted } from './sql/quoted';

/** A file of a canonical table that has been cut. */
export interface TableFile {
  readonly name: string;
  readonly table: CanonicalTable;
  readonly csv: CutCsv;
}

/** SQL of a cell that a file does not have. */
export const noText = 'CAST(NULL AS VARCHAR)';

/** SQL of the cell of a name in the rows of a file with the given header; tidy cells are as written. */
export function cellSql(names: readonly string[], isTidy: boolean): (name: string) => string {
  const header = names.map((name) => name.toLowerCase());
  return (name) => {
    const index = header.indexOf(name);
    if (index < 0) return noText;
    return isTidy ? `c${index}` : `replace(c${index}, chr(30), chr(10))`;
  };
}

/** Reads a file into the table of what came in, every cell with its line. */
export async function loadTable(
  connector: Connector,
  { name, table, csv }: TableFile,
  onPiece: OnPiece,
): Promise<void> {
  const idBefore = await lastReadingId(connector, table);
  const file = quoted(name);
  const insert = ({ from, isTidy }: PieceRows) =>
    tableRowsSql(table, cellSql(csv.header, isTidy), { from, file, id: `line + ${idBefore}`, isTidy });
  const uncounted = await forEachPiece(connector, csv, insert, onPiece, table.name === 'readings');
  for (const { rowsBefore, rows, firstLine } of uncounted)
    await connector.run(
      `INSERT INTO uncounted_readings VALUES (${file}, ${rowsBefore}, ${rows}, ${firstLine}, ${idBefore})`,
    );
}

/** Largest id that a reading has or is to have; 0 for other tables, which are numbered later. */
export async function lastReadingId(connector: Connector, { name }: CanonicalTable): Promise<number> {
  if (name !== 'readings') return 0;
  const [row] = await connector.query(`SELECT (${lastReadingIdSql})::INTEGER AS id`);
  return Number(row?.id);
}

/** Rows of text cells, by SQL. */
export interface CellRows {
  /** For FROM: `line_number` and the cells. */
  readonly from: string;
  /** Name of the file of a row. */
  readonly file: string;
  /** Id of a reading, of its `line` and what stands in `from`. */
  readonly id: string;
  readonly isTidy: boolean;
}

/**
 * Statement that adds rows to the table of what came in.
 *
 * @param cell SQL of the cell of a column
 */
export function tableRowsSql(
  table: CanonicalTable,
  cell: (name: string) => string,
  { from, file, id, isTidy }: CellRows,
): string {
  const cells = table.columns.map((column) => `${cell(column.name)} AS "${column.name}"`).join(', ');
  const row = `${file} AS file, line_number AS line, ${noText} AS value_column, ${noText} AS raw_text, ${cells}`;
  return table.name === 'readings'
    ? addReadingsSql(`(SELECT *, ${row} FROM ${from})`, id, isTidy)
    : `INSERT INTO raw_${table.name} SELECT ${row} FROM ${from}`;
}
