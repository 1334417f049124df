import type { BrowserContext } from 'playwright-core';
import { journalEntrySchema } from '../../../lib/records/decisions/Decision';

/** What lies in the store of the site: files by name with their text, and every line of the journal as text. */
export interface KeptNow {
  readonly files: ReadonlyMap<string, string>;
  readonly journal: readonly string[];
}

/**
 * Reads the store as it lies in the browser, from a page of the site on which none of its scripts runs.
 *
 * @throws Error if a line of the journal is not in its form, or the lines are not numbered from 1
 */
export async function keptNow(context: BrowserContext, url: string): Promise<KeptNow> {
  const page = await context.newPage();
  try {
    await page.goto(`${url}/icon.svg`);
    const kept = await page.evaluate(async () => {
      const answer = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result);
          request.onerror = () => reject(request.error);
        });
      if (!(await indexedDB.databases()).some(({ name }) => name === 'endfloat'))
        return { files: [], journal: [] };
      const database = await answer(indexedDB.open('endfloat'));
      const store = database.transaction('own-files').objectStore('own-files');
      const [files, journal] = await Promise.all([answer(store.get('files')), answer(store.get('journal'))]);
      database.close();
      const given = (files ?? []) as readonly { name: string; bytes: Uint8Array }[];
      return {
        files: given.map(({ name, bytes }): [string, string] => [name, new TextDecoder().decode(bytes)]),
        journal: (journal ?? []) as readonly unknown[],
      };
    });
    const lines = kept.journal.map((line, index) => {
      const { number, act, decision } = journalEntrySchema.parse(line);
      if (number !== index + 1) throw new Error(`line ${index + 1} of the journal has the number ${number}`);
      return lineOf(act, decision);
    });
    return { files: new Map(kept.files), journal: lines };
  } finally {
    await page.close();
  }
}

/** A line of the journal as text that compares. */
export function lineOf(act: string, decision: object): string {
  return `${act} ${JSON.stringify(Object.entries(decision).sort(([a], [b]) => (a < b ? -1 : 1)))}`;
}
