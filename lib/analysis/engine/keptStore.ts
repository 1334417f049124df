import { createStore, get, set } from 'idb-keyval';
import type { JournalEntry } from '../../records/decisions/Decision';
import type { InputFile } from '../../records/importReport';

/** What is kept in this browser between visits. */
interface Kept {
  readonly files: readonly InputFile[];
  readonly journal: readonly JournalEntry[];
  readonly source: 'demo' | 'own';
  /** Under which decisions are signed. */
  readonly initials: string;
}

const empty: Kept = { files: [], journal: [], source: 'demo', initials: '' };

const store = () => createStore('endfloat', 'own-files');

/**
 * What this browser keeps under a name: the user's own files as they were dropped, the journal of decisions about them, the
 * initials these are signed with, and which data was open last. Empty where nothing is kept or the browser refuses.
 */
export async function kept<Name extends keyof Kept>(name: Name): Promise<Kept[Name]> {
  try {
    return (await get<Kept[Name]>(name, store())) ?? empty[name];
  } catch {
    return empty[name];
  }
}

/** Keeps a value in place of what was kept under the name; false if the browser refuses. */
export async function keep<Name extends keyof Kept>(name: Name, value: Kept[Name]): Promise<boolean> {
  try {
    await set(name, value, store());
    return true;
  } catch {
    return false;
  }
}
