import { type Remote, wrap } from 'comlink';
import type { WearStatistics } from '../../stats/wear/types';
import type { MarginQuestion } from '../currentLine';
import type { FittedGroup } from '../groupWork';
import type { MarginRow } from '../types';
import type { Computing } from './group.worker';
import { unpackRows } from './packedRows';

/** What another thread does; rejects where there is none. */
export interface SecondThread {
  fitGroup(statistics: WearStatistics): Promise<FittedGroup>;
  marginsOf(questions: readonly MarginQuestion[]): Promise<readonly MarginRow[]>;
}

let thread: { readonly api: Remote<Computing>; readonly failure: Promise<never> } | null = null;

/** The thread, started with the first task; one that failed is not started again. */
function started() {
  if (thread !== null) return thread;
  const worker = new Worker(new URL('./group.worker.ts', import.meta.url), { type: 'module' });
  const failure = new Promise<never>((_, reject) => {
    const fail = (event: Event) => {
      event.preventDefault();
      worker.terminate();
      reject(new Error('the second thread stopped'));
    };
    worker.addEventListener('error', fail);
    worker.addEventListener('messageerror', fail);
  });
  failure.catch(() => {});
  thread = { api: wrap<Computing>(worker), failure };
  return thread;
}

export const secondThread: SecondThread = {
  async fitGroup(statistics) {
    const { api, failure } = started();
    return Promise.race([api.fitGroup(statistics), failure]);
  },
  async marginsOf(questions) {
    const { api, failure } = started();
    return unpackRows(await Promise.race([api.marginsOf(questions), failure]));
  },
};
