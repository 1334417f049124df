import { parentPort } from 'node:worker_threads';
import { analysePart } from './analysePart';
import type { PartTask } from './PartTask';

parentPort?.on('message', (task: PartTask) => {
  analysePart(task).then(
    (outcome) => parentPort?.postMessage({ outcome }),
    (error: unknown) =>
      parentPort?.postMessage({
        error: error instanceof Error ? (error.stack ?? error.message) : String(error),
      }),
  );
});
