import { type Remote, transfer, wrap } from 'comlink';
import type { WearStatistics } from '../../stats/wear/types';
import type { FittedGroup } from '../fitGroups';
import type { Fitting } from './fit.worker';

let helper: { readonly api: Remote<Fitting>; readonly failure: Promise<never> } | null = null;

/** The helper, started with the first fit; one that failed is not started again. */
function started() {
  if (helper !== null) return helper;
  const worker = new Worker(new URL('./fit.worker.ts', import.meta.url), { type: 'module' });
  const failure = new Promise<never>((_, reject) => {
    const fail = (event: Event) => {
      event.preventDefault();
      worker.terminate();
      reject(new Error('the second thread for fits stopped'));
    };
    worker.addEventListener('error', fail);
    worker.addEventListener('messageerror', fail);
  });
  failure.catch(() => {});
  helper = { api: wrap<Fitting>(worker), failure };
  return helper;
}

/** Fits one group on the second thread; rejects where there is none. */
export async function fitOnHelper(statistics: WearStatistics): Promise<FittedGroup> {
  const { api, failure } = started();
  return Promise.race([api.fitGroup(handedOver(statistics)), failure]);
}

/** A copy of just this group's numbers, handed over: a stretch of a longer column would be sent with the whole of it. */
function handedOver(statistics: WearStatistics): WearStatistics {
  const buffers: Transferable[] = [];
  const copied = Object.entries(statistics).map(([name, value]) => {
    if (!(value instanceof Float64Array || value instanceof Int32Array)) return [name, value];
    const copy = value.slice();
    buffers.push(copy.buffer);
    return [name, copy];
  });
  return transfer(Object.fromEntries(copied) as WearStatistics, buffers);
}
