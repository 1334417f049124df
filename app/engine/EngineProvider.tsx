'use client';

import {
  createContext,
  type ReactNode,
  startTransition,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useReducer,
  useRef,
} from 'react';
import type { DroppedFile, SheetPreview } from '../../lib/analysis/engine/EngineApi';
import type { Decision, JournalEntry, MeaningDecision } from '../../lib/records/decisions/Decision';
import { counted } from '../words/counted';
import { createEngineClient, type EngineClient, EngineFailure, type Opening } from './engineClient';
import { type EngineState, engineState, initialState } from './engineState';
import { whenIdle } from './whenIdle';

/** What pages see of the worker, and what they may ask of it. */
export interface Engine {
  readonly state: EngineState;
  /** Opens what was open last; also the way back after a failure. */
  readonly retry: () => void;
  readonly openDemo: () => void;
  readonly openOwn: () => void;
  readonly addFiles: (files: readonly DroppedFile[]) => void;
  /** Reads the own files again with these decisions added. */
  readonly decide: (decisions: readonly Decision[]) => void;
  readonly takeBack: (ids: readonly string[]) => void;
  readonly forgetOwn: () => void;
  readonly cancel: () => void;
  readonly waitOn: () => void;
  /** Asks the worker about the open fleet; undefined if none is open. */
  readonly ask: EngineClient['ask'];
  readonly ownFileNames: () => Promise<readonly string[]>;
  readonly journal: () => Promise<readonly JournalEntry[]>;
  /** Every held row and cell as CSV to be corrected in a spreadsheet. */
  readonly heldRows: () => Promise<string>;
  readonly fileLine: (file: string, line: number) => Promise<string | null>;
  /** Writes remarks to the journal, or takes them back, without reading files again. */
  readonly note: EngineClient['note'];
  readonly takeNotesBack: EngineClient['takeNotesBack'];
  /** Initials under which decisions are signed. */
  readonly initials: () => Promise<string>;
  readonly signAs: (initials: string) => void;
  /** What a sheet of the own files would be read as with these meanings. */
  readonly preview: (file: string, meanings: readonly MeaningDecision[]) => Promise<SheetPreview>;
}

const EngineContext = createContext<Engine | null>(null);

const labels = {
  open: 'Opening',
  openDemo: 'Opening the demo fleet',
  openOwn: 'Opening your files',
  forgetOwn: 'Removing your files from this browser',
};

function labelOf(opening: Opening): string {
  if (typeof opening === 'string') return labels[opening];
  if ('files' in opening) return `Reading ${counted(opening.files.length, 'file')}`;
  return 'decisions' in opening
    ? `Reading your files again with ${counted(opening.decisions.length, 'decision')}`
    : `Reading your files again without ${counted(opening.takenBack.length, 'decision')}`;
}

function createWorker(): Worker {
  return new Worker(new URL('../../lib/analysis/engine/engine.worker.ts', import.meta.url), {
    type: 'module',
  });
}

function notOpen(): Error {
  return new Error('Nothing is open: open the data again.');
}

function failureWords(error: unknown): string {
  if (error instanceof EngineFailure) return error.message;
  const cause = error instanceof Error ? error.message : String(error);
  return `The work ended with an error: ${cause}. Try again, or go back to the demo fleet.`;
}

/** Creates the worker once for all pages and holds what it has opened; survives moving between pages. */
export function EngineProvider({ children }: { readonly children: ReactNode }) {
  const [state, dispatch] = useReducer(engineState, initialState);
  const client = useRef<EngineClient | null>(null);

  const run = useCallback(async (opening: Opening) => {
    const again = typeof opening === 'object' && !('files' in opening);
    dispatch({ type: 'started', label: labelOf(opening), again });
    let own: EngineClient | null = null;
    try {
      own = client.current ?? createEngineClient(createWorker);
      client.current = own;
      const outcome = await own.run(opening, {
        onProgress: (progress) => client.current === own && dispatch({ type: 'progressed', progress }),
        onStalled: () => client.current === own && dispatch({ type: 'stalled' }),
      });
      // A whole fleet is drawn anew: in slices between which the page answers.
      if (client.current === own) startTransition(() => dispatch({ type: 'finished', outcome }));
    } catch (error) {
      if (client.current !== own) return;
      client.current = null;
      own?.dispose();
      dispatch({ type: 'failed', message: failureWords(error) });
    }
  }, []);

  useEffect(() => {
    // The engine's start takes both cores of a small machine; the page comes first.
    const callOff = whenIdle(() => void run('open'));
    return () => {
      callOff();
      client.current?.dispose();
      client.current = null;
    };
  }, [run]);

  const requests = useMemo<Omit<Engine, 'state'>>(
    () => ({
      retry: () => void run('open'),
      openDemo: () => void run('openDemo'),
      openOwn: () => void run('openOwn'),
      addFiles: (files) => void run({ files }),
      decide: (decisions) => void run({ decisions }),
      takeBack: (takenBack) => void run({ takenBack }),
      forgetOwn: () => void run('forgetOwn'),
      cancel: () => {
        dispatch({ type: 'cancelling' });
        client.current?.cancel();
      },
      waitOn: () => dispatch({ type: 'waitedOn' }),
      ask: (question, words) => client.current?.ask(question, words) ?? Promise.resolve(undefined),
      ownFileNames: () => client.current?.ownFileNames() ?? Promise.resolve([]),
      journal: () => client.current?.journal() ?? Promise.resolve([]),
      heldRows: () =>
        client.current?.heldRows() ?? Promise.reject(new Error('Nothing is open: add the files again.')),
      fileLine: (file, line) => client.current?.fileLine(file, line) ?? Promise.resolve(null),
      note: (decisions) => client.current?.note(decisions) ?? Promise.reject(notOpen()),
      takeNotesBack: (ids) => client.current?.takeNotesBack(ids) ?? Promise.reject(notOpen()),
      initials: () => client.current?.initials() ?? Promise.resolve(''),
      // If the worker is gone, its failure is told where it was needed; the initials stay in the field.
      signAs: (initials) => void client.current?.signAs(initials).catch(() => {}),
      preview: (file, meanings) =>
        client.current?.preview(file, meanings) ??
        Promise.reject(new Error('Nothing is open: add the file again.')),
    }),
    [run],
  );
  const engine = useMemo(() => ({ state, ...requests }), [state, requests]);
  return <EngineContext value={engine}>{children}</EngineContext>;
}

/** The engine of the page; throws outside an EngineProvider. */
export function useEngine(): Engine {
  const engine = useContext(EngineContext);
  if (engine === null) throw new Error('useEngine requires an EngineProvider above it');
  return engine;
}
