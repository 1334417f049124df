import type { SheetLayout } from '../types';
import { findHeader, type HeaderPlace } from './findHeader';
import { type SampleRecord, sampleRecords } from './sampleRecords';

/** One way of cutting a sheet: a delimiter, the records it gives and the header among them. */
export interface SheetCut {
  readonly delimiter: SheetLayout['delimiter'];
  readonly records: readonly SampleRecord[];
  readonly header: HeaderPlace;
  /** Cells of the widest header record. */
  readonly width: number;
  /** Records with as many cells as the header has. */
  readonly fitting: number;
  readonly score: number;
}

export const delimiters = [',', ';', '\t', '|'] as const;
const leastScore = 0.2;
/** Share of the lines with the same count of cells from which a sheet without a header still is no single column. */
const mostlyAlike = 0.8;

/**
 * The best of the four delimiters for a sheet, or null if none parts it into two columns or more.
 *
 * Score: mean over the records of 1 for as many cells as the header has, 0.6 for fewer, 0.3 for more, 0 for a single one; less half
 * the share of cells that hold another delimiter, so that decimal commas are not mistaken for one.
 */
export function bestCut(bytes: Uint8Array, fromLine: number): SheetCut | null {
  let best: SheetCut | null = null;
  for (const delimiter of delimiters) {
    const cut = cutBy(bytes, delimiter, fromLine);
    if (cut !== null && cut.score >= leastScore && cut.score > (best?.score ?? 0)) best = cut;
  }
  return best;
}

/** The sheet as one delimiter parts it, or null if that gives no header with two names or more. */
export function cutBy(
  bytes: Uint8Array,
  delimiter: SheetLayout['delimiter'],
  fromLine: number,
): SheetCut | null {
  const records = sampleRecords(bytes, delimiter, fromLine);
  const columns = usualCount(records);
  if (columns < 2) return null;
  const header = findHeader(records, columns);
  if (header === null) return null;
  const width = Math.max(...records.slice(header.first, header.end).map((record) => record.cells.length));
  if (width < 2) return null;
  let points = 0;
  let fitting = 0;
  let cells = 0;
  let strange = 0;
  for (const record of records) {
    const lastFilled = record.cells.findLastIndex((cell) => cell !== '');
    if (record.cells.length >= width && lastFilled < width) {
      points += 1;
      fitting++;
    } else if (record.cells.length > width) points += 0.3;
    else if (record.cells.length > 1) points += 0.6;
    cells += record.filled;
    strange += record.cells.filter((cell) => holdsOther(cell, delimiter)).length;
  }
  const score = points / records.length - (0.5 * strange) / cells;
  return { delimiter, records, header, width, fitting, score };
}

/** The sheet as one column, cut by a delimiter that stands in no cell, if there is such; null if one parts every line alike. */
export function singleColumn(bytes: Uint8Array, fromLine: number): SheetCut | null {
  let best: { delimiter: SheetLayout['delimiter']; records: readonly SampleRecord[]; parted: number } | null =
    null;
  for (const delimiter of delimiters) {
    const records = sampleRecords(bytes, delimiter, fromLine);
    const parted = records.filter((record) => record.cells.length > 1).length;
    const columns = usualCount(records);
    const alike = records.filter((record) => record.cells.length === columns).length;
    if (columns > 1 && records[0]?.cells.length === columns && alike >= mostlyAlike * records.length)
      return null;
    if (best === null || parted < best.parted) best = { delimiter, records, parted };
  }
  if (best === null) return null;
  const header = findHeader(best.records, 1);
  if (header === null) return null;
  const { delimiter, records } = best;
  const width = (records[header.first] as SampleRecord).cells.length;
  return { delimiter, records, header, width, fitting: records.length - best.parted, score: 0 };
}

/** Most frequent count of cells among records with two or more; of equals the larger one. */
function usualCount(records: readonly SampleRecord[]): number {
  const counts = new Map<number, number>();
  for (const { cells } of records) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  let usual = 1;
  for (const [count, times] of counts) {
    const most = usual < 2 ? 0 : (counts.get(usual) ?? 0);
    if (count > 1 && (times > most || (times === most && count > usual))) usual = count;
  }
  return usual;
}

/** A delimiter within a cell that is neither a decimal nor a thousands comma nor the comma of a sentence. */
function holdsOther(cell: string, delimiter: string): boolean {
  if (delimiters.some((other) => other !== ',' && other !== delimiter && cell.includes(other))) return true;
  return delimiter !== ',' && /\S,\S/.test(cell.replace(/\d,\d/g, ''));
}
