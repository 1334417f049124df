import { proxy, type Remote, releaseProxy, transfer, wrap } from 'comlink';
import type {
  DroppedFile,
  EngineApi,
  OpenOutcome,
  ReportProgress,
  SheetPreview,
} from '../../lib/analysis/engine/EngineApi';
import type { FleetAnswer, FleetQuestion, QuestionWords } from '../../lib/analysis/engine/FleetQuestions';
import type {
  AcknowledgementDecision,
  Decision,
  JournalEntry,
  MeaningDecision,
} from '../../lib/records/decisions/Decision';

/** Time until the first sign of life of a worker, and until a silent one is reported as stalled. */
export const startTimeout_ms = 45_000;
export const stallTimeout_ms = 90_000;
export const cancelTimeout_ms = 10_000;

/** The worker died or never answered: its message says what to do. */
export class EngineFailure extends Error {}

/** What the page may ask for that opens data. */
export type Opening =
  | 'open'
  | 'openDemo'
  | 'openOwn'
  | 'forgetOwn'
  | { readonly files: readonly DroppedFile[] }
  | { readonly decisions: readonly Decision[] }
  /** Ids of decisions that are taken back. */
  | { readonly takenBack: readonly string[] };

export interface OpeningListener {
  onProgress: ReportProgress;
  /** No sign of life for stallTimeout_ms; the work goes on. */
  onStalled(): void;
}

export interface EngineClient {
  run(opening: Opening, listener: OpeningListener): Promise<OpenOutcome>;
  ask<Name extends FleetQuestion>(
    question: Name,
    words: QuestionWords<Name>,
  ): Promise<FleetAnswer<Name> | undefined>;
  ownFileNames(): Promise<readonly string[]>;
  journal(): Promise<readonly JournalEntry[]>;
  preview(file: string, meanings: readonly MeaningDecision[]): Promise<SheetPreview>;
  heldRows(): Promise<string>;
  fileLine(file: string, line: number): Promise<string | null>;
  note(decisions: readonly AcknowledgementDecision[]): Promise<void>;
  takeNotesBack(ids: readonly string[]): Promise<void>;
  initials(): Promise<string>;
  signAs(initials: string): Promise<void>;
  /** Asks the worker to stop; one that does not within cancelTimeout_ms is ended. */
  cancel(): void;
  dispose(): void;
}

const notStarted =
  'The computing part of this page did not start. A very old browser, a blocked script or a broken connection can cause this: try again, or reload the page.';
const stopped =
  'The computing part of this page stopped. It may have run out of memory: try again, or open fewer files.';
const ended = 'The work was stopped because it did not answer. Nothing in your files was changed: try again.';

function callOf(api: Remote<EngineApi>, opening: Opening, onProgress: ReportProgress): Promise<OpenOutcome> {
  if (typeof opening === 'string') return api[opening](proxy(onProgress));
  if ('decisions' in opening) return api.decide(opening.decisions, proxy(onProgress));
  if ('takenBack' in opening) return api.takeBack(opening.takenBack, proxy(onProgress));
  const buffers = opening.files.map((file) => file.bytes);
  return api.addFiles(transfer([...opening.files], buffers), proxy(onProgress));
}

/** Wraps one worker: every call ends with a result or an EngineFailure, even if the worker dies or stays silent. */
export function createEngineClient(createWorker: () => Worker): EngineClient {
  const worker = createWorker();
  const api = wrap<EngineApi>(worker);
  let alive = false;
  let fail: (failure: EngineFailure) => void = () => {};
  const failure = new Promise<never>((_, reject) => {
    fail = (reason) => {
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
    async run(opening, listener) {
      let silence: ReturnType<typeof setInterval> | undefined;
      const listen = () => {
        clearInterval(silence);
        silence = setInterval(listener.onStalled, stallTimeout_ms);
      };
      running += 1;
      listen();
      try {
        const call = callOf(api, opening, (progress) => {
          signOfLife();
          listen();
          listener.onProgress(progress);
        });
        const outcome = await Promise.race([call, failure]);
        signOfLife();
        return outcome;
      } finally {
        running -= 1;
        clearInterval(silence);
        clearTimeout(cancelling);
      }
    },
    // The wrapped type loses that an answer follows from its question.
    ask: (question, words) => Promise.race([(api as unknown as EngineApi).ask(question, words), failure]),
    ownFileNames: () => Promise.race([api.ownFileNames(), failure]),
    journal: () => Promise.race([api.journal(), failure]),
    preview: (file, meanings) => Promise.race([api.preview(file, meanings), failure]),
    heldRows: () => Promise.race([api.heldRows(), failure]),
    fileLine: (file, line) => Promise.race([api.fileLine(file, line), failure]),
    note: (decisions) => Promise.race([api.note(decisions), failure]),
    takeNotesBack: (ids) => Promise.race([api.takeNotesBack(ids), failure]),
    initials: () => Promise.race([api.initials(), failure]),
    signAs: (initials) => Promise.race([api.signAs(initials), failure]),
    cancel() {
      if (running === 0) return;
      clearTimeout(cancelling);
      cancelling = setTimeout(() => fail(new EngineFailure(ended)), cancelTimeout_ms);
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
