import { group } from 'd3-array';
import type { TableName } from '../../records/canonicalTables';
import { normaliseBody } from '../../records/csv/normaliseCsv';
import { fieldSeparator, lineBreakInCell } from '../../records/csv/recordReader';
import type { InputFile, Problem } from '../../records/importReport';
import { decodeText } from '../../records/intake/decodeText';
import { byteOfLine } from '../../records/intake/layout/byteOfLine';
import { recogniseLayout } from '../../records/intake/recogniseLayout';
import type { SheetColumns } from '../../records/intake/SheetColumns';
import type { SheetLayout } from '../../records/intake/types';
import type { Connector, Row } from '../Connector';
import { type ImportOptions, importFiles } from '../importFiles';
import { tableOfHead } from '../tableOfHead';

/** Lines under the header that a preview reads, and how many of them it shows. */
const linesRead = 200;
const linesShown = 8;
/** Tables on which the reading of a sheet depends. */
const tablesRead: ReadonlySet<TableName> = new Set(['characteristics', 'units', 'installations', 'events']);

/** A reading as an import would use it. */
export interface PreviewReading {
  readonly column: string;
  readonly characteristic: string;
  readonly stage: 'found' | 'left';
  readonly clock: string | null;
  readonly value_mm: number;
  readonly lower_mm: number | null;
  readonly upper_mm: number | null;
}

/** One line of the file as it was cut, and what comes of it. */
export interface PreviewLine {
  readonly line: number;
  readonly cells: readonly string[];
  readonly unit: string | null;
  readonly date: string | null;
  readonly unitHours: number | null;
  readonly readings: readonly PreviewReading[];
  /** What of the line is held or interpreted, with the reason. */
  readonly problems: readonly Problem[];
}

/** What a sheet would be read as. */
export interface SheetPreview {
  readonly sheet: SheetColumns;
  readonly lines: readonly PreviewLine[];
  /** The file goes on after the lines that were read. */
  readonly isPart: boolean;
  readonly readingsIn: number;
  readonly readingsUsed: number;
  readonly readingsHeld: number;
  /** Questions that would be asked. */
  readonly questions: number;
}

/**
 * Imports the first lines of one sheet as importFiles does, beside the tables it depends on, and says what came of each.
 *
 * What a whole column settles (decimal sign, order of dates) is settled from these lines alone.
 *
 * @param connector with a schema of its own, which is used up
 * @throws if the file is not there or is not a sheet with columns
 */
export async function previewSheet(
  connector: Connector,
  files: readonly InputFile[],
  name: string,
  options: ImportOptions,
): Promise<SheetPreview> {
  const file = files.find((one) => one.name === name);
  if (file === undefined) throw new Error(`The file '${name}' is not among those read: drop it again.`);
  const decoded = decodeText(file.bytes);
  if ('reason' in decoded) throw new Error(`'${name}' cannot be shown: ${decoded.reason}.`);
  const layout = recogniseLayout(decoded.bytes);
  if ('reason' in layout) throw new Error(`'${name}' cannot be shown: ${layout.reason}.`);
  const end = byteOfLine(decoded.bytes, layout.firstBodyLine + linesRead);
  const head = { name, bytes: decoded.bytes.subarray(0, end) };
  const tables = files.filter((one) => one !== file && isTableRead(one));
  const imported = await importFiles(connector, [...tables, head], async () => {}, options);
  const sheet = imported.sheets.get(name);
  const counts = imported.files.find((one) => one.file === name);
  if (sheet === undefined || counts === undefined)
    throw new Error(`'${name}' is a table of this program's own form: its columns need no correction.`);
  const problems = group(
    imported.problems.filter((problem) => problem.file === name),
    (problem) => problem.row,
  );
  const lines = cutLines(head.bytes, layout);
  const shown = lines.map(({ line }) => line).join(', ') || '0';
  const overhauls = new Map(
    (await connector.query(overhaulsSql(shown), [name])).map((row) => [Number(row.line), row]),
  );
  const readings = group(await connector.query(readingsSql(shown), [name]), (row) => Number(row.line));
  return {
    sheet,
    lines: lines.map(({ line, cells }) => ({
      line,
      cells,
      unit: textOf(overhauls.get(line)?.unit),
      date: textOf(overhauls.get(line)?.date),
      unitHours: numberOf(overhauls.get(line)?.unit_hours),
      readings: (readings.get(line) ?? []).map(readingOf),
      problems: problems.get(line) ?? [],
    })),
    isPart: end < decoded.bytes.length,
    readingsIn: counts.readingsIn,
    readingsUsed: counts.readingsUsed,
    readingsHeld: counts.readingsHeld,
    questions: imported.questions.length,
  };
}

function isTableRead(file: InputFile): boolean {
  const table = tableOfHead(file);
  return table !== null && tablesRead.has(table);
}

/** The first lines under the header in cells; one that cannot be cut stands there as a single cell. */
function cutLines(
  bytes: Uint8Array,
  layout: SheetLayout,
): readonly { readonly line: number; readonly cells: readonly string[] }[] {
  const csv = normaliseBody(bytes, layout.delimiter, layout.firstBodyLine, layout.columns);
  const records = new TextDecoder().decode(csv.body).split('\n', linesShown);
  const cut = records
    .filter((record) => record !== '')
    .map((record) => {
      const [line, ...cells] = record
        .replaceAll(String.fromCharCode(lineBreakInCell), ' ')
        .split(String.fromCharCode(fieldSeparator));
      return { line: Number(line), cells };
    });
  const held = csv.held.map(({ row, raw }) => ({ line: row, cells: [raw] }));
  return [...cut, ...held].sort((a, b) => a.line - b.line).slice(0, linesShown);
}

/** Unit, day and hours by line: of the overhaul that stands in it, or that its readings belong to. */
const overhaulsSql = (lines: string) => `
  WITH placed AS (
    SELECT line, overhaul FROM overhauls WHERE file = $1
    UNION SELECT line, overhaul FROM raw_readings WHERE file = $1)
  SELECT p.line, o.unit, CAST(o.date AS VARCHAR) AS date, CAST(o.unit_hours AS DOUBLE) AS unit_hours
  FROM placed p JOIN overhauls o USING (overhaul) WHERE p.line IN (${lines})`;

const readingsSql = (lines: string) => `
  SELECT m.line, r.value_column, m.characteristic, m.stage, m.clock,
    m.value_mm::DOUBLE AS value_mm, m.lower_mm::DOUBLE AS lower_mm, m.upper_mm::DOUBLE AS upper_mm
  FROM readings_mm m JOIN readings r USING (id) WHERE m.file = $1 AND m.line IN (${lines}) ORDER BY m.id`;

function readingOf(row: Row): PreviewReading {
  return {
    column: String(row.value_column ?? ''),
    characteristic: String(row.characteristic),
    stage: row.stage === 'left' ? 'left' : 'found',
    clock: textOf(row.clock),
    value_mm: Number(row.value_mm),
    lower_mm: numberOf(row.lower_mm),
    upper_mm: numberOf(row.upper_mm),
  };
}

function textOf(value: string | number | null | undefined): string | null {
  return value === null || value === undefined ? null : String(value);
}

function numberOf(value: string | number | null | undefined): number | null {
  return value === null || value === undefined ? null : Number(value);
}
