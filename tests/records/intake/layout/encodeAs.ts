import { Buffer } from 'node:buffer';

export const encodings = [
  'UTF-8',
  'UTF-8 marked',
  'UTF-16 LE',
  'UTF-16 LE marked',
  'UTF-16 BE',
  'UTF-16 BE marked',
  'windows-1252',
  'windows-1251',
] as const;
export type TestEncoding = (typeof encodings)[number];

/** Characters that windows-1252 puts between 0x80 and 0x9F (the rest of its upper half is that of Unicode). */
const upperControls = new Map([
  ['€', 0x80],
  ['…', 0x85],
  ['‘', 0x91],
  ['’', 0x92],
  ['–', 0x96],
]);

const others1251 = new Map([
  ['Ё', 0xa8],
  ['ё', 0xb8],
  ['№', 0xb9],
  ['€', 0x88],
  ['…', 0x85],
  ['‘', 0x91],
  ['’', 0x92],
  ['–', 0x96],
]);

/** Byte of a character in windows-1251: А to я from 0xC0 on, a few more where they are; above 0xFF for any other. */
function byteOf1251(character: string): number {
  const code = character.charCodeAt(0);
  if (code >= 0x410 && code <= 0x44f) return code - 0x410 + 0xc0;
  if (/[\u00a0°±µ·]/.test(character)) return code;
  return others1251.get(character) ?? (code < 0x80 ? code : 0x100);
}

/** Writes text in an encoding, byte by byte, independently of the code under test. */
export function encodeAs(text: string, encoding: TestEncoding): Uint8Array {
  if (encoding === 'windows-1252') {
    return Uint8Array.from(text, (character) => {
      const byte = upperControls.get(character) ?? character.charCodeAt(0);
      if (byte > 0xff) throw new Error(`encodeAs requires characters of windows-1252, got ${character}`);
      return byte;
    });
  }
  if (encoding === 'windows-1251') {
    return Uint8Array.from(text, (character) => {
      const byte = byteOf1251(character);
      if (byte > 0xff) throw new Error(`encodeAs requires characters of windows-1251, got ${character}`);
      return byte;
    });
  }
  const marked = encoding.endsWith('marked') ? `\ufeff${text}` : text;
  if (encoding.startsWith('UTF-8')) return Uint8Array.from(Buffer.from(marked, 'utf8'));
  const words = Buffer.from(marked, 'utf16le');
  return Uint8Array.from(encoding.startsWith('UTF-16 BE') ? words.swap16() : words);
}
