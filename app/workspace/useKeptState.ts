'use client';

import { useEffect, useState } from 'react';
import type { KeptState } from '../../lib/analysis/engine/kept/KeptState';
import { useEngine } from '../engine/EngineProvider';

/** How it stands with what is kept in this browser, followed as it changes; null until the worker has said so. */
export function useKeptState(): KeptState | null {
  const { state, request } = useEngine();
  const [kept, setKept] = useState<KeptState | null>(null);
  // A worker that is gone answers no more: its successor is asked once it works.
  const isWorking = state.work?.progress != null || state.fleet !== null;
  useEffect(() => {
    if (!isWorking) return;
    let stale = false;
    const follow = async () => {
      let seen = 0;
      while (!stale) {
        const now = await request.keptState(seen);
        if (stale) return;
        setKept(now);
        seen = now.number;
      }
    };
    follow().catch(() => !stale && setKept(null));
    return () => {
      stale = true;
    };
  }, [request, isWorking]);
  return kept;
}
