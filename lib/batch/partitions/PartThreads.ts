import { Worker } from 'node:worker_threads';
import type { PartOutcome, PartTask } from './PartTask';

type Reply = { readonly outcome: PartOutcome } | { readonly error: string };

/** Threads that analyse parts. They load the program when they are made, which goes on beside what comes before their first task. */
export class PartThreads {
  private readonly workers: readonly Worker[];
  /** Why a thread ended outside a task. */
  private readonly ended = new Map<Worker, string>();

  constructor(threads: number) {
    this.workers = Array.from({ length: threads }, () => {
      const worker = new Worker(new URL('./partThread.mjs', import.meta.url));
      worker.on('error', (error) => this.ended.set(worker, error.message));
      worker.on('exit', () => this.ended.set(worker, this.ended.get(worker) ?? 'its thread ended'));
      return worker;
    });
  }

  /**
   * Has tasks done, each by the next thread that is free; outcomes in the order of the tasks.
   *
   * @throws Error with the part's name if a thread fails
   */
  async outcomes(tasks: readonly PartTask[]): Promise<readonly PartOutcome[]> {
    const outcomes: PartOutcome[] = [];
    const left = tasks.entries();
    const lane = async (worker: Worker) => {
      for (const [index, task] of left) outcomes[index] = await this.outcomeOf(worker, task);
    };
    await Promise.all(this.workers.map(lane));
    return outcomes;
  }

  /** Stops the threads, whatever they are at. */
  async end(): Promise<void> {
    await Promise.all(this.workers.map((worker) => worker.terminate()));
  }

  private outcomeOf(worker: Worker, task: PartTask): Promise<PartOutcome> {
    return new Promise((resolve, reject) => {
      const fail = (reason: string) => reject(new Error(`the folder '${task.part.name}' failed: ${reason}`));
      const ended = this.ended.get(worker);
      if (ended !== undefined) {
        fail(ended);
        return;
      }
      const onEnd = () => fail(this.ended.get(worker) ?? 'its thread ended');
      worker.once('exit', onEnd);
      worker.once('message', (reply: Reply) => {
        worker.off('exit', onEnd);
        if ('outcome' in reply) resolve(reply.outcome);
        else fail(reply.error);
      });
      worker.postMessage(task);
    });
  }
}
