import { decodeText } from './decodeText';
import { byteOfLine } from './layout/byteOfLine';

const longestShown = 2000;

/** A line of a file as it stands there, without its end; null if the file has no such line or is no text. */
export function lineOfFile(bytes: Uint8Array, line: number): string | null {
  const decoded = decodeText(bytes);
  if ('reason' in decoded) return null;
  const start = byteOfLine(decoded.bytes, line);
  if (start >= decoded.bytes.length) return null;
  const end = byteOfLine(decoded.bytes.subarray(start), 2) + start;
  const text = new TextDecoder().decode(decoded.bytes.subarray(start, end)).replace(/[\r\n]+$/, '');
  return text.length > longestShown ? `${text.slice(0, longestShown)}…` : text;
}
