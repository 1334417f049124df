import { createStore, get, set } from 'idb-keyval';
import type { InputFile } from '../../records/importReport';

const store = () => createStore('endfloat', 'own-files');

/** The user's own files as they were dropped, kept in this browser; empty if there are none or the browser keeps nothing. */
export async function keptFiles(): Promise<readonly InputFile[]> {
  try {
    return (await get<readonly InputFile[]>('files', store())) ?? [];
  } catch {
    return [];
  }
}

/** Keeps the files in this browser in place of those kept before; false if the browser refuses. */
export async function keepFiles(files: readonly InputFile[]): Promise<boolean> {
  try {
    await set('files', files, store());
    return true;
  } catch {
    return false;
  }
}

/** Which data was open last: remembered so that a reload shows the same. */
export async function lastSource(): Promise<'demo' | 'own'> {
  try {
    return (await get<'demo' | 'own'>('source', store())) ?? 'demo';
  } catch {
    return 'demo';
  }
}

/** Remembers which data is open; a browser that keeps nothing starts with the demo fleet. */
export async function rememberSource(source: 'demo' | 'own'): Promise<void> {
  try {
    await set('source', source, store());
  } catch {
    // Nothing to do: the next visit starts with the demo fleet.
  }
}
