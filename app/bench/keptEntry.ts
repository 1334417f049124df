import { createStore, del, get, set, type UseStore } from 'idb-keyval';
import { type BenchEntry, benchEntrySchema } from '../../lib/analysis/bench/benchEntry';

/** A database of its own: what is typed is kept at once, whichever tab writes the own files. */
const store = () => {
  opened ??= createStore('endfloat-bench', 'entries');
  return opened;
};
let opened: UseStore | null = null;

const nameOf = (source: 'demo' | 'own', unit: string) => `${source} ${unit}`;

/** What was typed of a unit's overhaul and neither saved nor discarded; null if nothing was, or if it cannot be read. */
export async function keptEntry(source: 'demo' | 'own', unit: string): Promise<BenchEntry | null> {
  const read = benchEntrySchema.safeParse(await get(nameOf(source, unit), store()));
  return read.success && read.data.unit === unit ? read.data : null;
}

/** Keeps what is typed by now. */
export function keepEntry(source: 'demo' | 'own', entry: BenchEntry): Promise<void> {
  return set(nameOf(source, entry.unit), entry, store());
}

export function forgetEntry(source: 'demo' | 'own', unit: string): Promise<void> {
  return del(nameOf(source, unit), store());
}
