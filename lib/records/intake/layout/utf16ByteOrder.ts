const sampleBytes = 65_536;

/**
 * Byte order of UTF-16 text without byte order mark, or null if the zero bytes fit neither order.
 *
 * Digits, delimiters and line ends are below U+0100 in every language, so their upper bytes are zero: at odd positions
 * in little-endian text, at even ones in big-endian text, and hardly ever on the other side.
 */
export function utf16ByteOrder(bytes: Uint8Array): 'UTF-16 LE' | 'UTF-16 BE' | null {
  const length = Math.min(sampleBytes, bytes.length) & ~1;
  if (length < 4) return null;
  let evenZeros = 0;
  let oddZeros = 0;
  for (let at = 0; at < length; at += 2) {
    if (bytes[at] === 0) evenZeros++;
    if (bytes[at + 1] === 0) oddZeros++;
  }
  const least = Math.max(2, 0.05 * (length / 2));
  if (oddZeros >= least && evenZeros <= oddZeros / 50) return 'UTF-16 LE';
  if (evenZeros >= least && oddZeros <= evenZeros / 50) return 'UTF-16 BE';
  return null;
}
