/** FNV-1a hash of a text, 32 bits: turns a name into a seed. */
export function hash32(text: string): number {
  let hash = 0x811c9dc5;
  for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
  return hash | 0;
}

/** Mixes an integer into a hash so that neighbouring integers give unlike results; 32 bits. */
export function mixed(hash: number, value: number): number {
  let h = Math.imul(hash ^ value, 0x9e3779b1);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
