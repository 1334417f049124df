import type { BrowserContext, Page } from 'playwright-core';
import type { EngineApi } from '../../../lib/analysis/engine/EngineApi';

interface EngineWindow {
  engineWorker?: Worker;
}

/** Notes the page's engine worker as soon as the page speaks to it. */
export async function noteEngine(context: BrowserContext): Promise<void> {
  // Functions that tsx hands to a page name themselves by a helper that only its own modules have.
  await context.addInitScript('globalThis.__name ??= (named) => named');
  await context.addInitScript(() => {
    const speak = Worker.prototype.postMessage as (this: Worker, ...words: unknown[]) => void;
    Worker.prototype.postMessage = function (this: Worker, ...words: unknown[]) {
      const path = (words[0] as { path?: readonly string[] } | null)?.path;
      if (path?.[0] === 'open') (window as EngineWindow).engineWorker = this;
      speak.apply(this, words);
    };
  });
}

/** Resolves once the page has its engine's worker; it may still be opening what is kept. */
export async function engineSpeaks(page: Page): Promise<void> {
  await page.waitForFunction(() => (window as EngineWindow).engineWorker !== undefined);
}

/** Resolves once the engine has opened the own files, or the demo fleet where none are kept, and computes nothing any more. */
export async function engineHasOpened(page: Page): Promise<void> {
  const isOpen = () =>
    document.querySelector('progress') === null &&
    /Your files|Demo fleet/.test(document.querySelector('header')?.textContent ?? '');
  await page.waitForFunction(isOpen, undefined, { timeout: 120_000 });
}

/**
 * Calls the page's own engine by the messages the page itself sends (comlink 4, type APPLY), so that no button stands between
 * the test and the moment at which a call returns. Bytes are given as { asBuffer: numbers }.
 *
 * @returns what the call came to, once it has returned and what it did is said to be saved
 */
export async function callEngine(
  page: Page,
  name: keyof EngineApi,
  words: readonly unknown[],
  reportsProgress: boolean,
): Promise<unknown> {
  return page.evaluate(
    async ({ called, said, reports }) => {
      const worker = (window as EngineWindow).engineWorker as Worker;
      const withBytes = (word: unknown): unknown => {
        if (typeof word !== 'object' || word === null) return word;
        if (Array.isArray(word)) return word.map(withBytes);
        const { asBuffer } = word as { asBuffer?: readonly number[] };
        if (asBuffer !== undefined) return Uint8Array.from(asBuffer).buffer;
        return Object.fromEntries(Object.entries(word).map(([key, value]) => [key, withBytes(value)]));
      };
      const call = (method: string, list: readonly unknown[], progress: boolean) =>
        new Promise<unknown>((resolve, reject) => {
          const id = `test ${Math.random()}`;
          const channel = new MessageChannel();
          const listen = ({ data }: MessageEvent) => {
            if (data?.id !== id) return;
            worker.removeEventListener('message', listen);
            if (data.type === 'HANDLER') reject(new Error(data.value?.value?.message ?? 'the call failed'));
            else resolve(data.value);
          };
          worker.addEventListener('message', listen);
          const raw = list.map((value) => ({ type: 'RAW', value: withBytes(value) }));
          const report = { type: 'HANDLER', name: 'proxy', value: channel.port1 };
          const message = {
            id,
            type: 'APPLY',
            path: [method],
            argumentList: progress ? [...raw, report] : raw,
          };
          worker.postMessage(message, progress ? [channel.port1] : []);
        });
      const came = await call(called, said, reports);
      const state = async (after: number) =>
        (await call('keptState', [after], false)) as { readonly saving: string; readonly number: number };
      let kept = await state(0);
      while (kept.saving === 'saving') kept = await state(kept.number);
      if (kept.saving !== 'saved') throw new Error(`what was done is ${kept.saving}`);
      if (came instanceof Uint8Array) return [...came];
      const outcome = came as { ok?: boolean; message?: string | null } | undefined;
      return typeof outcome?.ok === 'boolean' ? { ok: outcome.ok, message: outcome.message ?? null } : came;
    },
    { called: name, said: words, reports: reportsProgress },
  );
}
