import { foreignFormat } from './layout/foreignFormat';
import { oneByteEncoding } from './layout/oneByteEncoding';
import { isUtf8, transcode } from './layout/transcode';
import { utf16ByteOrder } from './layout/utf16ByteOrder';
import type { DecodedText, Encoding } from './types';

/** Why a file's bytes are no text that can be read, in words that say what to do. */
export interface Undecodable {
  readonly reason: string;
}

const empty: Undecodable = { reason: 'the file is empty: export it again' };
const notText: Undecodable = {
  reason: 'the file is not text (it holds zero bytes or control characters): save the sheet as CSV (UTF-8)',
};
/** Damaged places for each sound character beyond ASCII up to which a file still counts as UTF-8. */
const damageShare = 0.2;

/**
 * Text of a file as UTF-8 bytes: UTF-8 or UTF-16 with or without byte order mark, else windows-1252 or, where its letters are
 * Russian ones, windows-1251.
 *
 * Clean UTF-8 is not copied: the bytes come back as they are, less the mark. What had to be interpreted is said in `evidence`.
 */
export function decodeText(bytes: Uint8Array): DecodedText | Undecodable {
  if (bytes.length === 0) return empty;
  const foreign = foreignFormat(bytes);
  if (foreign !== null) return { reason: foreign };
  const [first, second, third] = bytes;
  if (first === 0xff && second === 0xfe)
    return utf16(bytes.subarray(2), 'UTF-16 LE', 'byte order mark FF FE');
  if (first === 0xfe && second === 0xff)
    return utf16(bytes.subarray(2), 'UTF-16 BE', 'byte order mark FE FF');
  const marked = first === 0xef && second === 0xbb && third === 0xbf;
  const text = marked ? bytes.subarray(3) : bytes;
  if (text.length === 0) return empty;
  if (text.includes(0)) {
    const order = marked ? null : utf16ByteOrder(text);
    return order === null ? notText : utf16(text, order, 'every other byte of plain characters is zero');
  }
  const encoding = marked ? 'UTF-8 with byte order mark' : 'UTF-8';
  if (!isUtf8(text)) return notUtf8(text, encoding);
  const evidence = marked ? 'byte order mark EF BB BF, and all bytes are UTF-8' : 'all bytes are UTF-8';
  return { bytes: text, encoding, evidence };
}

function utf16(
  text: Uint8Array,
  encoding: 'UTF-16 LE' | 'UTF-16 BE',
  sign: string,
): DecodedText | Undecodable {
  if (text.length === 0) return empty;
  const decoded = transcode(text, encoding === 'UTF-16 LE' ? 'utf-16le' : 'utf-16be');
  if (decoded.bytes.includes(0) || hasControls(decoded.bytes)) return notText;
  return { bytes: decoded.bytes, encoding, evidence: `${sign}${damage(decoded.replaced)}` };
}

/** Few damaged places among many sound characters are a damaged UTF-8 file; otherwise the bytes are single characters. */
function notUtf8(text: Uint8Array, encoding: Encoding): DecodedText | Undecodable {
  if (hasControls(text)) return notText;
  const damaged = transcode(text, 'utf-8');
  // A file that was cut off within its last character is sound before it.
  const inside = damaged.replaced - (endsDamaged(damaged.bytes) ? 1 : 0);
  const isDamaged = damaged.multiByte > 0 && inside <= damageShare * damaged.multiByte;
  if (isDamaged || encoding === 'UTF-8 with byte order mark') {
    return {
      bytes: damaged.bytes,
      encoding,
      evidence: `nearly all bytes are UTF-8${damage(damaged.replaced)}`,
    };
  }
  return oneByte(text);
}

/** One byte a character: Western European or Cyrillic, as its letters say. */
function oneByte(text: Uint8Array): DecodedText | Undecodable {
  const told = oneByteEncoding(text);
  if ('reason' in told) return told;
  return { bytes: transcode(text, told.encoding).bytes, ...told };
}

function endsDamaged(bytes: Uint8Array): boolean {
  const [first, second, third] = bytes.subarray(-3);
  return first === 0xef && second === 0xbf && third === 0xbd;
}

function damage(replaced: number): string {
  if (replaced === 0) return '';
  return replaced === 1
    ? '; 1 place has no meaning and shows as \ufffd'
    : `; ${replaced} places have no meaning and show as \ufffd`;
}

/** More than one control character in a hundred bytes is no text. */
function hasControls(bytes: Uint8Array): boolean {
  const sample = bytes.subarray(0, 65_536);
  let controls = 0;
  for (const byte of sample) {
    if (byte < 0x20 && byte !== 0x09 && byte !== 0x0a && byte !== 0x0d) controls++;
  }
  return controls > Math.max(2, sample.length / 100);
}
