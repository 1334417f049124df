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
  useState,
} from 'react';
import type { EngineRequests } from '../../lib/analysis/engine/EngineApi';
import { type PackedFleet, unpackFleet } from '../../lib/analysis/engine/PackedFleet';
import type { Progress } from '../../lib/analysis/types';
import { siteFleetName } from '../words/siteFleet';
import { useWriting } from '../writing/useWriting';
import {
  createEngineClient,
  type EngineClient,
  EngineEnded,
  EngineFailure,
  type OpeningName,
  type OpeningWords,
  requestsBy,
} from './engineClient';
import { type EngineState, engineState, initialState } from './engineState';
import { openingLabel, readsAgain } from './openingLabel';
import { ProgressContext } from './useProgress';
import { whenIdle } from './whenIdle';

/** What pages see of the worker, and what they may ask of it. */
export interface Engine {
  readonly state: EngineState;
  /** Opens data; 'open' is also the way back after a failure. */
  readonly start: <Name extends OpeningName>(opening: Name, ...words: OpeningWords<Name>) => void;
  /** Asks without opening anything; fails where the worker is gone. */
  readonly request: EngineRequests;
  readonly cancel: () => void;
  readonly waitOn: () => void;
}

const EngineContext = createContext<Engine | null>(null);

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
  return `The work ended with an error: ${cause}. Try again, or go back to the ${siteFleetName()}.`;
}

/** Whoever comes with files in hand, or looks at the demo fleet's picture first, is not slowed by opening its records. */
const pauseBehindDemo_ms = 2_000;

/** Creates the worker once for all pages and holds what it has opened; survives moving between pages. */
export function EngineProvider({ children }: { readonly children: ReactNode }) {
  const [state, dispatch] = useReducer(engineState, initialState);
  const [progress, setProgress] = useState<Progress | null>(null);
  const client = useRef<EngineClient | null>(null);
  const opening = useRef(0);

  const run = useCallback(async function work<Name extends OpeningName>(
    name: Name,
    words: OpeningWords<Name>,
  ): Promise<void> {
    opening.current += 1;
    const number = opening.current;
    const behind = name === 'open' && number === 1;
    setProgress(null);
    dispatch({ type: 'started', label: openingLabel(name, words), behind, again: readsAgain(name) });
    let own: EngineClient | null = null;
    // Another opening may have taken its place.
    const isCurrent = () => client.current === own && opening.current === number;
    try {
      if (client.current?.isGone()) {
        client.current.dispose();
        client.current = null;
      }
      own = client.current ?? createEngineClient(createWorker);
      client.current = own;
      const outcome = await own.run(name, words, {
        onProgress: (now) => {
          if (!isCurrent()) return;
          setProgress(now);
          dispatch({ type: 'progressed' });
        },
        onStalled: () => isCurrent() && dispatch({ type: 'stalled' }),
      });
      // A whole fleet is drawn anew: in slices between which the page answers.
      if (isCurrent()) startTransition(() => dispatch({ type: 'finished', outcome }));
    } catch (error) {
      if (client.current !== own) return;
      client.current = null;
      own?.dispose();
      dispatch({ type: 'failed', message: failureWords(error) });
      // Stopping one work must not cost what was open before it.
      if (error instanceof EngineEnded && name !== 'open') await work('open', []);
    }
  }, []);

  useEffect(() => {
    // The engine's start takes both cores of a small machine; the page comes first.
    let callOff = whenIdle(() => {
      const own = createEngineClient(createWorker);
      client.current = own;
      const isFirst = () => client.current === own && opening.current === 0;
      const openIn = (pause_ms: number) => {
        const timer = setTimeout(() => {
          callOff = whenIdle(() => isFirst() && void run('open', []));
        }, pause_ms);
        callOff = () => clearTimeout(timer);
      };
      own.call('lastFleet', []).then(
        (packed) => {
          if (client.current !== own) return;
          const fleet = packed === null ? null : unpackFleet(packed as PackedFleet);
          if (fleet !== null) startTransition(() => dispatch({ type: 'remembered', fleet }));
          openIn(fleet?.source === 'demo' ? pauseBehindDemo_ms : 0);
        },
        // Opening says why the worker does not answer.
        () => openIn(0),
      );
    });
    return () => {
      callOff();
      client.current?.dispose();
      client.current = null;
    };
  }, [run]);

  const actions = useMemo<Omit<Engine, 'state'>>(
    () => ({
      start: (opening, ...words) => void run(opening, words),
      request: requestsBy((name, words) => client.current?.call(name, words) ?? Promise.reject(notOpen())),
      cancel: () => {
        dispatch({ type: 'cancelling' });
        client.current?.cancel();
      },
      waitOn: () => dispatch({ type: 'waitedOn' }),
    }),
    [run],
  );
  const engine = useMemo(() => ({ state, ...actions }), [state, actions]);
  return (
    <EngineContext value={engine}>
      <ProgressContext value={progress}>{children}</ProgressContext>
    </EngineContext>
  );
}

/** The engine of the page; throws outside an EngineProvider. */
export function useEngine(): Engine {
  // Who shows what is open writes it, and writes it anew when the reader changes how numbers are written.
  useWriting();
  const engine = useContext(EngineContext);
  if (engine === null) throw new Error('useEngine requires an EngineProvider above it');
  return engine;
}
