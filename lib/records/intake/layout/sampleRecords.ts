import { fieldSeparator, lineBreakInCell, RecordReader } from '../../csv/recordReader';
import type { SheetLayout } from '../types';

/** One record of a sheet, cells trimmed; blank records are left out. */
export interface SampleRecord {
  /** Line at which it starts and the first line after it, counted from 1 in the file. */
  readonly line: number;
  readonly nextLine: number;
  readonly cells: readonly string[];
  readonly filled: number;
}

const sampleBytes = 524_288;
const sampleCount = 200;
const decoder = new TextDecoder();

/** First records of a sheet (up to 200 of the first 512 KiB) as one delimiter cuts them, from a line onwards. */
export function sampleRecords(
  bytes: Uint8Array,
  delimiter: SheetLayout['delimiter'],
  fromLine: number,
): readonly SampleRecord[] {
  const sample = bytes.subarray(0, sampleBytes);
  const reader = new RecordReader(sample, delimiter.charCodeAt(0), 0);
  const records: SampleRecord[] = [];
  while (!reader.atEnd && records.length < sampleCount) {
    const line = reader.line;
    reader.outputLength = 0;
    reader.read();
    // A record that the end of the sample cuts through says nothing about the cells of a record.
    const isCut = reader.atEnd && sample.length < bytes.length && records.length > 0;
    if (reader.isBlank || isCut || line < fromLine || reader.fault === 'too long') continue;
    const cells = decoder
      .decode(reader.output.subarray(0, reader.outputLength))
      .replaceAll(String.fromCharCode(lineBreakInCell), ' ')
      .split(String.fromCharCode(fieldSeparator))
      .map((cell) => cell.trim());
    const filled = cells.reduce((count, cell) => count + (cell === '' ? 0 : 1), 0);
    if (filled > 0) records.push({ line, nextLine: reader.line, cells, filled });
  }
  return records;
}
