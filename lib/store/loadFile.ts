import type { CanonicalTable } from '../records/canonicalTables';
import { type HeldLine, normaliseCsv } from '../records/csv/normaliseCsv';
import type { InputFile } from '../records/importReport';
import { type CanonicalFile, type RecognisedFile, wideSheetColumns } from '../records/recogniseFile';
import type { WideColumn } from '../records/wideColumns';
import type { Connector } from './Connector';
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
}

/** Reads a recognised file into the raw tables, every cell as text with its line. */
export async function loadFile(
  connector: Connector,
  file: InputFile,
  recognised: CanonicalFile,
): Promise<LoadedFile> {
  const csv = normaliseCsv(file.bytes, recognised.delimiter);
  const header = csv.header.map((name) => name.toLowerCase());
  if (csv.records > 0) {
    await connector.loadText('dropped', ['line_number', ...header.map((_, index) => `c${index}`)], csv.body);
    const cell = (name: string) =>
      header.includes(name) ? `replace(c${header.indexOf(name)}, chr(30), chr(10))` : 'NULL';
    if (recognised.kind === 'table') await connector.run(tableRowsSql(file.name, recognised.table, cell));
    else await connector.run(sheetRowsSql(file.name, recognised.columns, cell));
    await connector.run('DROP TABLE dropped');
  }
  return {
    name: file.name,
    recognised,
    rowsIn: csv.rowsIn,
    held: csv.held,
    message: messageOf(csv.rowsIn, recognised.unusedColumns),
  };
}

function messageOf(rowsIn: number, unusedColumns: readonly string[]): string | null {
  if (rowsIn === 0) return 'The file has a header and no rows.';
  return unusedColumns.length === 0 ? null : `Columns not used: ${unusedColumns.join(', ')}.`;
}

function tableRowsSql(file: string, table: CanonicalTable, cell: (name: string) => string): string {
  const names = table.columns.map((column) => `"${column.name}"`).join(', ');
  const cells = table.columns.map((column) => cell(column.name)).join(', ');
  return `INSERT INTO raw_${table.name} (file, line, ${names}) SELECT ${quoted(file)}, line_number::INTEGER, ${cells} FROM dropped`;
}

/** A wide sheet gives an overhaul a row, a reading a filled cell, and the frames of its units. */
function sheetRowsSql(file: string, columns: readonly WideColumn[], cell: (name: string) => string): string {
  const trimmed = (name: string) => `nullif(trim(${cell(name)}), '')`;
  const overhaul = `coalesce(${trimmed('overhaul')}, ${trimmed('unit')} || '/' || ${trimmed('date')}, ${quoted(file)} || ':' || line_number)`;
  const others = wideSheetColumns.filter((name) => name !== 'overhaul' && name !== 'frame');
  const rest = others.map(cell).join(', ');
  const names = others.join(', ');
  const readings = columns.map(
    (
      column,
    ) => `SELECT ${quoted(file)}, line_number::INTEGER, ${quoted(column.column)}, ${overhaul}, ${quoted(column.characteristic)}, ${quoted(column.stage)},
      ${column.clock === null ? 'NULL' : quoted(column.clock)}, ${cell(column.column)}, ${quoted(column.uom)} FROM dropped WHERE ${trimmed(column.column)} IS NOT NULL`,
  );
  return `INSERT INTO raw_overhauls (file, line, overhaul, ${names}) SELECT ${quoted(file)}, line_number::INTEGER, ${overhaul}, ${rest} FROM dropped;
    INSERT INTO raw_readings (file, line, value_column, overhaul, characteristic, stage, clock, value, uom) ${readings.join(' UNION ALL ')};
    INSERT INTO sheet_frames SELECT ${trimmed('unit')}, ${trimmed('frame')}, ${quoted(file)}, line_number::INTEGER FROM dropped
      WHERE ${trimmed('unit')} IS NOT NULL AND ${trimmed('frame')} IS NOT NULL;`;
}
