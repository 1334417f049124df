import { Worker } from 'node:worker_threads';
import type { PartOutcome, PartTask } from './PartTask';

type Reply = { readonly outcome: PartOutcome } | { readonly error: string };

/**
 * Has tasks done by so many threads, each taking the next one when it is free; outcomes in the order of the tasks.
 *
 * @throws Error with the part's name if a thread fails; the others are stopped
 */
export async function inThreads(
  tasks: readonly PartTask[],
  threads: number,
): Promise<readonly PartOutcome[]> {
  const outcomes: PartOutcome[] = [];
  const left = tasks.entries();
  const workers = Array.from(
    { length: Math.min(threads, tasks.length) },
    () => new Worker(new URL('./partThread.mjs', import.meta.url)),
  );
  const lane = async (worker: Worker) => {
    for (const [index, task] of left) outcomes[index] = await outcomeOf(worker, task);
  };
  try {
    await Promise.all(workers.map(lane));
    return outcomes;
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

function outcomeOf(worker: Worker, task: PartTask): Promise<PartOutcome> {
  return new Promise((resolve, reject) => {
    const fail = (reason: string) => reject(new Error(`the folder '${task.part.name}' failed: ${reason}`));
    const onError = (error: Error) => fail(error.message);
    const onExit = () => fail('its thread ended');
    worker.once('error', onError);
    worker.once('exit', onExit);
    worker.once('message', (reply: Reply) => {
      worker.off('error', onError);
      worker.off('exit', onExit);
      if ('outcome' in reply) resolve(reply.outcome);
      else fail(reply.error);
    });
    worker.postMessage(task);
  });
}
