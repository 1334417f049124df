import type { OpenOutcome } from '../../lib/analysis/engine/EngineApi';
import type { FleetResult, ImportedFile, Problem, Question, UnderstoodSheet } from '../../lib/analysis/types';

/** Work under way in the worker. */
export interface Work {
  readonly label: string;
  /** What the page does of itself at its start; nobody waits for it with files in hand. */
  readonly behind: boolean;
  /** A sign of life has come since it started; how far it is, useProgress says. */
  readonly alive: boolean;
  /** No sign of life for a while; the reader may wait on or stop. */
  readonly stalled: boolean;
  readonly cancelling: boolean;
}

/** What the last attempt came to, for the reader. */
export interface Outcome {
  readonly ok: boolean;
  readonly message: string;
}

/** What was read of files, be they open or not. */
export interface ReadFiles {
  readonly files: readonly ImportedFile[];
  readonly problems: readonly Problem[];
  readonly problemsFound: number;
  readonly questions: readonly Question[];
  readonly sheets: readonly UnderstoodSheet[];
}

export interface EngineState {
  /** What is open, if anything is. */
  readonly fleet: FleetResult | null;
  /** The answer of last time, shown as what is open until it has been computed again. */
  readonly before: FleetResult | null;
  readonly work: Work | null;
  readonly outcome: Outcome | null;
  /** Files of the last attempt, if it opened nothing; they stay in sight while answers about them are applied. */
  readonly attempt: ReadFiles | null;
}

export type EngineAction =
  | {
      readonly type: 'started';
      readonly label: string;
      readonly behind: boolean;
      /** The files of the last attempt are read again. */
      readonly again: boolean;
    }
  /** The answer of last time is at hand. */
  | { readonly type: 'remembered'; readonly fleet: FleetResult }
  | { readonly type: 'progressed' }
  | { readonly type: 'stalled' }
  | { readonly type: 'waitedOn' }
  | { readonly type: 'cancelling' }
  | { readonly type: 'finished'; readonly outcome: OpenOutcome }
  /** The worker is gone and with it what was open. */
  | { readonly type: 'failed'; readonly message: string };

/** The state before the worker has been asked for anything. */
export const initialState: EngineState = {
  fleet: null,
  before: null,
  work: { label: 'Opening', behind: true, alive: false, stalled: false, cancelling: false },
  outcome: null,
  attempt: null,
};

function finished(state: EngineState, outcome: OpenOutcome): EngineState {
  if (outcome.ok) {
    const message = outcome.message;
    return {
      fleet: outcome.fleet,
      before: isOfLastTime(state) ? state.before : null,
      work: null,
      outcome: message === null ? null : { ok: true, message },
      attempt: null,
    };
  }
  const { ok, message, ...read } = outcome;
  const attempt = read.files.length + read.problems.length > 0 ? read : state.attempt;
  // What is shown of last time only is not open: without its records nothing more could be asked of it.
  const fleet = isOfLastTime(state) ? null : state.fleet;
  return { fleet, before: null, work: null, outcome: { ok, message }, attempt };
}

/** Whether what is shown is the answer of last time, and its records are still being opened. */
export function isOfLastTime({ fleet, before }: EngineState): boolean {
  return fleet !== null && fleet === before;
}

/** Whether files may be added: while nothing is at work, or only what is behind the demo fleet is still being opened. */
export function mayAdd(state: EngineState): boolean {
  return state.work === null || (isOfLastTime(state) && state.fleet?.source === 'demo');
}

/** Next state of the engine as the pages see it. */
export function engineState(state: EngineState, action: EngineAction): EngineState {
  switch (action.type) {
    case 'started':
      return {
        ...state,
        work: {
          label: action.label,
          behind: action.behind,
          alive: false,
          stalled: false,
          cancelling: false,
        },
        outcome: null,
        attempt: action.again ? state.attempt : null,
      };
    case 'remembered':
      return state.fleet === null ? { ...state, fleet: action.fleet, before: action.fleet } : state;
    case 'progressed':
      // Most of them change nothing, and whoever shows what is open is not drawn anew.
      return state.work === null || (state.work.alive && !state.work.stalled)
        ? state
        : { ...state, work: { ...state.work, alive: true, stalled: false } };
    case 'stalled':
      return state.work === null ? state : { ...state, work: { ...state.work, stalled: true } };
    case 'waitedOn':
      return state.work === null ? state : { ...state, work: { ...state.work, stalled: false } };
    case 'cancelling':
      return state.work === null ? state : { ...state, work: { ...state.work, cancelling: true } };
    case 'finished':
      return finished(state, action.outcome);
    case 'failed':
      return {
        fleet: null,
        before: null,
        work: null,
        outcome: { ok: false, message: action.message },
        attempt: null,
      };
  }
}
