import { joinedBytes } from '../../joinedBytes';

const step = 1 << 20;
/** What windows-1252 has at 0x80 to 0x9F; the five places without a character stay control characters. */
const windows1252Upper = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** Text in another encoding as UTF-8, piece by piece, with the count of places that had no meaning (U+FFFD). */
export function transcode(
  bytes: Uint8Array,
  label: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252' | 'windows-1251',
): { readonly bytes: Uint8Array; readonly replaced: number; readonly multiByte: number } {
  const decoder = new TextDecoder(label, { ignoreBOM: true });
  const encoder = new TextEncoder();
  const pieces: Uint8Array[] = [];
  let replaced = 0;
  let multiByte = 0;
  for (let start = 0; start < bytes.length; start += step) {
    const last = start + step >= bytes.length;
    const decoded = decoder.decode(bytes.subarray(start, start + step), { stream: !last });
    // Node 20 reads windows-1252 as ISO 8859-1; browsers do not. Neither leaves anything else in this range.
    const text =
      label === 'windows-1252' ? decoded.replace(/[\u0080-\u009f]/g, windows1252Character) : decoded;
    for (let at = text.indexOf('\ufffd'); at >= 0; at = text.indexOf('\ufffd', at + 1)) replaced++;
    multiByte += text.match(/[\u0080-\ud7ff\ue000-\ufffc]/g)?.length ?? 0;
    pieces.push(encoder.encode(text));
  }
  return { bytes: joinedBytes(pieces), replaced, multiByte };
}

function windows1252Character(control: string): string {
  return windows1252Upper[control.charCodeAt(0) - 0x80] ?? control;
}

/** Whether all bytes are UTF-8; decodes piece by piece and keeps nothing. */
export function isUtf8(bytes: Uint8Array): boolean {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  try {
    for (let start = firstBeyondAscii(bytes); start < bytes.length; start += step) {
      decoder.decode(bytes.subarray(start, start + step), { stream: start + step < bytes.length });
    }
    return true;
  } catch {
    return false;
  }
}

/** Most files of readings hold nothing beyond ASCII, and looking for that is ten times as fast as decoding. */
function firstBeyondAscii(bytes: Uint8Array): number {
  let at = 0;
  while (at < bytes.length && (bytes[at] as number) < 0x80) at++;
  return at;
}
