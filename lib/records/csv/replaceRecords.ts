import { joinedBytes } from '../joinedBytes';
import { byteOrderMark } from './normaliseCsv';
import { RecordReader } from './recordReader';

const encoder = new TextEncoder();
const lf = 0x0a;
const cr = 0x0d;

/**
 * The bytes of a file (UTF-8) with the records that start at the given lines replaced by other text; every other record keeps its line.
 *
 * @param texts new text by line, counted from 1; a text of several lines is joined to one
 */
export function replaceRecords(
  bytes: Uint8Array,
  delimiter: string,
  texts: ReadonlyMap<number, string>,
): Uint8Array {
  const reader = new RecordReader(bytes, delimiter.charCodeAt(0), byteOrderMark(bytes));
  const parts: Uint8Array[] = [];
  let copied = 0;
  while (!reader.atEnd) {
    const { line, position: start } = reader;
    reader.outputLength = 0;
    reader.read();
    const text = texts.get(line);
    if (text === undefined) continue;
    let end = reader.position;
    while (end > start && (bytes[end - 1] === lf || bytes[end - 1] === cr)) end--;
    const linesLost = Math.max(0, reader.line - line - 1);
    parts.push(
      bytes.subarray(copied, start),
      encoder.encode(text.replaceAll(/\s*[\r\n]+\s*/g, ' ') + '\n'.repeat(linesLost)),
    );
    copied = end;
  }
  parts.push(bytes.subarray(copied));
  return joinedBytes(parts);
}
