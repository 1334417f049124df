const offsetBasis = 0xcbf29ce484222325n;
const prime = 0x100000001b3n;
const encoder = new TextEncoder();

/** FNV-1a of 64 bits over the UTF-8 bytes of a text, 16 hexadecimal digits; source: the FNV authors' published algorithm. */
export function fnv1a64(text: string): string {
  let hash = offsetBasis;
  for (const byte of encoder.encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * prime);
  return hash.toString(16).padStart(16, '0');
}

/**
 * Shape of a sheet: a short text that is the same for all sheets with the same column names in the same order.
 *
 * Delimiter, encoding, capitals, spaces round and between words, and delimiters at the end of the header do not matter.
 */
export function sheetShape(names: readonly string[]): string {
  const plain = names.map((name) => name.normalize('NFC').replace(/\s+/g, ' ').trim().toLowerCase());
  while (plain.at(-1) === '') plain.pop();
  return `${plain.length} columns, ${fnv1a64(JSON.stringify(plain))}`;
}
