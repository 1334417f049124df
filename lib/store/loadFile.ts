import { type CutCsv, cutCsv, type OnPiece } from '../records/csv/cutCsv';
import type { HeldLine } from '../records/csv/normaliseCsv';
import type { InputFile } from '../records/importReport';
import { type CanonicalFile, type RecognisedFile, wideSheetColumns } from '../records/recogniseFile';
import type { Connector } from './Connector';
import { loadPieces } from './loadPieces';
import { cellSql, lastReadingId, noText, tableRowsSql } from './loadTable';
import type { PlainFiles } from './PlainFiles';
import { applyEdits } from './rulings/applyEdits';
import { type EditTarget, joinedCellsOf } from './rulings/editTarget';
import { cutWithEdits } from './rulings/heldLines';
import { addReadingsSql, lastReadingIdSql } from './sql/checkedReadings';
import { quoted } from './sql/quoted';

/** A file as text rows in the store. */
export interface LoadedFile {
  readonly name: string;
  readonly recognised: RecognisedFile;
  readonly rowsIn: number;
  readonly held: readonly HeldLine[];
  readonly message: string | null;
  /** Filled cells of the reading columns of a workshop's sheet, lines dropped later included. */
  readonly readingCells?: number;
  /** Filled cells under reading columns in lines that could not be cut. */
  readonly readingCellsUncut?: number;
}

type WideSheet = Extract<CanonicalFile, { kind: 'wide' }>;

/** Share of the work on a file that cutting it takes. */
const cutShare = 0.2;

/**
 * Reads a recognised file into the tables of what came in, every cell with its line.
 *
 * @param isRuled whether there are rulings on rows of the file
 * @param plainFiles takes in a file that may be read with others
 */
export async function loadFile(
  connector: Connector,
  file: InputFile,
  recognised: CanonicalFile,
  isRuled: boolean,
  plainFiles: PlainFiles,
  onPiece: OnPiece,
): Promise<LoadedFile> {
  const { delimiter } = recognised;
  const csv = await cutWithEdits(connector, file.name, file.bytes, delimiter, (bytes) =>
    cutCsv(bytes, delimiter, (share) => onPiece(cutShare * share)),
  );
  const onRows = (share: number) => onPiece(cutShare + (1 - cutShare) * share);
  if (csv.records > 0 && recognised.kind === 'table' && !isRuled)
    await plainFiles.add({ name: file.name, table: recognised.table, csv }, onRows);
  else if (csv.records > 0) {
    await plainFiles.read();
    await loadEdited(connector, file.name, csv, recognised, onRows);
  }
  return {
    name: file.name,
    recognised,
    rowsIn: csv.rowsIn,
    held: csv.held,
    message: messageOf(csv.rowsIn, recognised.unusedColumns),
    ...(recognised.kind === 'wide'
      ? { readingCellsUncut: cellsUncut(csv.held, readingColumnsOf(recognised, csv.header)) }
      : {}),
  };
}

/** Positions of the cells of each reading of a wide sheet. */
function readingColumnsOf({ columns }: WideSheet, header: readonly string[]): readonly (readonly number[])[] {
  const names = header.map((name) => name.toLowerCase());
  return columns.map(({ column }) => [names.indexOf(column)]);
}

/**
 * Readings in lines that could not be cut, as far as their cells can be told.
 *
 * @param readings positions of the cells of each reading of a line
 */
export function cellsUncut(held: readonly HeldLine[], readings: readonly (readonly number[])[]): number {
  return held.reduce(
    (sum, { filled }) => sum + readings.filter((cells) => cells.some((cell) => filled.includes(cell))).length,
    0,
  );
}

/** Reads a sheet, or a file with rulings on its rows, whose edits come before anything is read. */
async function loadEdited(
  connector: Connector,
  file: string,
  csv: CutCsv,
  recognised: CanonicalFile,
  onPiece: OnPiece,
): Promise<void> {
  const header = csv.header.map((name) => name.toLowerCase());
  const cell = cellSql(header, false);
  await loadPieces(connector, 'dropped', 'line_number', csv, onPiece);
  await applyEdits(connector, editTargetOf(file, recognised, header));
  if (recognised.kind === 'table') {
    const { table } = recognised;
    const id = `line + ${await lastReadingId(connector, table)}`;
    await connector.run(
      tableRowsSql(table, cell, { from: 'dropped', file: quoted(file), id, isTidy: false }),
    );
  } else await connector.run(sheetRowsSql(file, recognised, cell));
  await connector.run('DROP TABLE dropped');
}

/** Canonical files write numbers with a decimal point. */
function editTargetOf(file: string, recognised: CanonicalFile, names: readonly string[]): EditTarget {
  const isNumber = (name: string) =>
    recognised.kind === 'table'
      ? recognised.table.columns.some((column) => column.name === name && column.kind === 'number')
      : /_hours$/.test(name) || recognised.columns.some(({ column }) => column === name);
  return {
    file,
    table: 'dropped',
    lineColumn: 'line_number',
    names,
    joined: recognised.kind === 'table' ? joinedCellsOf(recognised.table, names) : [],
    signOf: (column) => (isNumber(names[column] ?? '') ? 'point' : null),
  };
}

function messageOf(rowsIn: number, unusedColumns: readonly string[]): string | null {
  if (rowsIn === 0) return 'The file has a header and no rows.';
  return unusedColumns.length === 0 ? null : `Columns not used: ${unusedColumns.join(', ')}.`;
}

/** A wide sheet gives an overhaul a row, a reading a filled cell, and the frames of its units. */
function sheetRowsSql(file: string, sheet: WideSheet, cell: (name: string) => string): string {
  const { columns, remarksColumn } = sheet;
  const trimmed = (name: string) => `nullif(trim(${cell(name)}), '')`;
  const overhaul = `coalesce(${trimmed('overhaul')}, ${trimmed('unit')} || '/' || ${trimmed('date')}, ${quoted(file)} || ':' || line_number)`;
  const others = wideSheetColumns.filter((name) => name !== 'overhaul' && name !== 'frame');
  const rest = others.map((name) => cell(name === 'remarks' ? remarksColumn : name)).join(', ');
  const names = others.join(', ');
  const readings = columns.map(
    (
      column,
      position,
    ) => `SELECT ${quoted(file)} AS file, line_number AS line, ${quoted(column.column)} AS value_column, ${noText} AS raw_text, ${overhaul} AS overhaul,
      ${quoted(column.characteristic)} AS characteristic, ${quoted(column.stage)} AS stage, ${column.clock === null ? noText : quoted(column.clock)} AS clock, ${cell(column.column)} AS value,
      ${quoted(column.uom)} AS uom, ${['lower', 'upper', 'source_file', 'source_row'].map((name) => `${noText} AS ${name}`).join(', ')}, ${position} AS position
      FROM dropped WHERE ${trimmed(column.column)} IS NOT NULL`,
  );
  return `INSERT INTO raw_overhauls (file, line, overhaul, ${names}) SELECT ${quoted(file)}, line_number, ${overhaul}, ${rest} FROM dropped;
    ${addReadingsSql(`(${readings.join(' UNION ALL ')} ORDER BY position, line)`, `position * (SELECT max(line_number) FROM dropped) + line + ${lastReadingIdSql}`)}
    INSERT INTO sheet_frames SELECT ${trimmed('unit')}, ${trimmed('frame')}, ${quoted(file)}, line_number FROM dropped
      WHERE ${trimmed('unit')} IS NOT NULL AND ${trimmed('frame')} IS NOT NULL;
    INSERT INTO cell_reasons VALUES (${quoted(file)}, NULL, 'remarks', ${quoted(remarksColumn)}, NULL, NULL);`;
}
