const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** Ascending order of two cell values: numbers by size, texts by reading order with numbers inside them by size. */
export function compareValues(a: unknown, b: unknown): number {
  if (typeof a === 'number' && typeof b === 'number') return a - b;
  return collator.compare(String(a), String(b));
}
