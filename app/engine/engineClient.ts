import { proxy, releaseProxy, transfer, wrap } from 'comlink';
import type {
  EngineApi,
  EngineOpenings,
  EngineRequests,
  OpenOutcome,
  ReportProgress,
} from '../../lib/analysis/engine/EngineApi';
import { type PackedOutcome, unpackOutcome } from '../../lib/analysis/engine/PackedFleet';
import { unpackAnswer } from '../../lib/analysis/engine/packedAnswer';
import { inTurn } from './inTurn';

/** Time until the first sign of life of a worker, and until a silent one is reported as stalled. */
export const startTimeout_ms = 45_000;
export const stallTimeout_ms = 90_000;
export const cancelTimeout_ms = 10_000;

/** The worker died or never answered: its message says what to do. */
export class EngineFailure extends Error {}

/** The worker was ended because it did not stop when asked. */
export class EngineEnded extends EngineFailure {}

export type OpeningName = keyof EngineOpenings;

/** What an opening is told besides where its progress goes. */
export type OpeningWords<Name extends OpeningName> =
  Parameters<EngineOpenings[Name]> extends [...infer Words, ReportProgress] ? Words : never;

export interface OpeningListener {
  onProgress: ReportProgress;
  /** No sign of life for stallTimeout_ms; the work goes on. */
  onStalled(): void;
}

export interface EngineClient {
  run<Name extends OpeningName>(
    opening: Name,
    words: OpeningWords<Name>,
    listener: OpeningListener,
  ): Promise<OpenOutcome>;
  /** Calls a method of the worker by its name, see requestsBy. */
  readonly call: Call;
  /** Whether the worker has ended with a failure: every call fails from then on. */
  readonly isGone: () => boolean;
  /** Asks the worker to stop; one that does not within cancelTimeout_ms is ended. */
  cancel(): void;
  dispose(): void;
}

const notStarted =
  'The computing part of this page did not start. A very old browser, a blocked script or a broken connection can cause this: try again, or reload the page.';
const stopped =
  'The computing part of this page stopped. It may have run out of memory: try again, or open fewer files.';
const ended = 'The work was stopped because it did not answer. Nothing in your files was changed: try again.';

/** Bytes are handed over and not copied. */
function handedOver(words: readonly unknown[]): readonly unknown[] {
  return words.map((word) => {
    const buffers = [word].flat().flatMap((one) => (hasBytes(one) ? [one.bytes] : []));
    return buffers.length === 0 ? word : transfer(word as object, buffers);
  });
}

function hasBytes(word: unknown): word is { readonly bytes: ArrayBuffer } {
  return typeof word === 'object' && word !== null && 'bytes' in word && word.bytes instanceof ArrayBuffer;
}

type Call = (name: string, words: readonly unknown[]) => Promise<unknown>;
type Methods = Readonly<Record<string, (...words: readonly unknown[]) => Promise<unknown>>>;

/** Every request as a method that makes the call of its name. */
export function requestsBy(call: Call): EngineRequests {
  return new Proxy({} as EngineRequests, {
    get:
      (_, name) =>
      (...words: readonly unknown[]) =>
        call(String(name), words),
  });
}

/** Wraps one worker: every call ends with a result or an EngineFailure, even if the worker dies or stays silent. */
export function createEngineClient(createWorker: () => Worker): EngineClient {
  const worker = createWorker();
  const api = wrap<EngineApi>(worker);
  // The wrapped type loses what a call has to do with its name.
  const call: Call = (name, words) => Promise.race([(api as unknown as Methods)[name]?.(...words), failure]);
  let alive = false;
  let gone = false;
  let fail: (failure: EngineFailure) => void = () => {};
  const failure = new Promise<never>((_, reject) => {
    fail = (reason) => {
      gone = true;
      worker.terminate();
      reject(reason);
    };
  });
  failure.catch(() => {});
  worker.addEventListener('error', (event) => {
    event.preventDefault();
    fail(new EngineFailure(alive ? stopped : notStarted));
  });
  worker.addEventListener('messageerror', () => fail(new EngineFailure(stopped)));
  const starting = setTimeout(() => fail(new EngineFailure(notStarted)), startTimeout_ms);
  const signOfLife = () => {
    alive = true;
    clearTimeout(starting);
  };
  let cancelling: ReturnType<typeof setTimeout> | undefined;
  let running = 0;

  return {
    async run(opening, words, listener) {
      let silence: ReturnType<typeof setInterval> | undefined;
      const listen = () => {
        clearInterval(silence);
        silence = setInterval(listener.onStalled, stallTimeout_ms);
      };
      running += 1;
      listen();
      try {
        const report: ReportProgress = (progress) => {
          signOfLife();
          listen();
          listener.onProgress(progress);
        };
        const outcome = await call(opening, [...handedOver(words), proxy(report)]);
        signOfLife();
        // Taking over the message of a large fleet was a task already.
        return await inTurn(() => unpackOutcome(outcome as PackedOutcome));
      } finally {
        running -= 1;
        clearInterval(silence);
        clearTimeout(cancelling);
      }
    },
    call: async (name, words) => unpackAnswer(await call(name, words)),
    isGone: () => gone,
    cancel() {
      if (running === 0) return;
      clearTimeout(cancelling);
      cancelling = setTimeout(() => fail(new EngineEnded(ended)), cancelTimeout_ms);
      api.cancel().catch(() => fail(new EngineFailure(stopped)));
    },
    dispose() {
      clearTimeout(starting);
      clearTimeout(cancelling);
      api[releaseProxy]();
      worker.terminate();
    },
  };
}
