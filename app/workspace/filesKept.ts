import type { KeptState } from '../../lib/analysis/engine/kept/KeptState';
import { forget, remember, remembered } from '../frame/smallMemory';

const name = 'endfloat files kept';

/** Whether files were kept here, as a mark outside their store says, and are there no more though the store can be read. */
export function wereFilesCleared({ saving, files, aside }: KeptState): boolean {
  return saving === 'saved' && files === 0 && aside.length === 0 && remembered(name) !== null;
}

/** Marks that files are kept, or that they were removed by an act of this tab; asks the browser, the first time, not to clear them. */
export function noteFilesKept({ saving, files, writes }: KeptState): void {
  if (saving !== 'saved' || !writes) return;
  if (files === 0) {
    forgetFilesKept();
    return;
  }
  if (remembered(name) !== null) return;
  // A browser that remembers nothing cannot be asked to keep it.
  if (remember(name, 'yes')) void navigator.storage?.persist?.().catch(() => false);
}

/** Takes the mark away: nobody misses the files. */
export function forgetFilesKept(): void {
  forget(name);
}
