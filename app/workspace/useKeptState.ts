'use client';

import { createContext, useContext } from 'react';
import type { KeptState } from '../../lib/analysis/engine/kept/KeptState';
import { useEngine } from '../engine/EngineProvider';

/** How it stands with what is kept in this browser, as the pages see it. */
export interface Kept {
  /** Null until the worker has said so. */
  readonly state: KeptState | null;
  /** Files were kept here, and the browser has cleared them. */
  readonly isCleared: boolean;
  /** The reader knows that they are gone. */
  readonly leaveCleared: () => void;
}

export const KeptContext = createContext<Kept>({ state: null, isCleared: false, leaveCleared: () => {} });

export function useKept(): Kept {
  return useContext(KeptContext);
}

/** Whether this tab may change what is kept; where it may not, the reason stands above the content of the page. */
export function useMayWrite(): boolean {
  const { state } = useKept();
  return state === null || (state.writes && !state.changedElsewhere);
}

/** Whether a decision may be made now: nothing is at work, and this tab may change what is kept. */
export function useMayDecide(): boolean {
  const { state } = useEngine();
  const mayWrite = useMayWrite();
  return state.work === null && mayWrite;
}
