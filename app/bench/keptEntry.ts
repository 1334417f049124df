import { createStore, del, delMany, get, keys, set, type UseStore } from 'idb-keyval';
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

/** Forgets what was typed of any unit of the own files: they are removed from this browser. */
export async function forgetOwnEntries(): Promise<void> {
  const own = (await keys<string>(store())).filter((name) => name.startsWith('own '));
  await delMany(own, store());
}
