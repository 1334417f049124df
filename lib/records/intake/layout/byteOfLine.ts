const lf = 0x0a;
const cr = 0x0d;

/** Position of the first byte of a line (counted from 1; LF, CRLF or CR end a line), or the length if there are fewer lines. */
export function byteOfLine(bytes: Uint8Array, line: number): number {
  let at = 0;
  for (let current = 1; current < line; current++) {
    while (at < bytes.length && bytes[at] !== lf && bytes[at] !== cr) at++;
    if (bytes[at] === cr && bytes[at + 1] === lf) at++;
    at++;
  }
  return Math.min(at, bytes.length);
}
