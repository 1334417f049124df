'use client';

import { type ReactNode, useCallback, useEffect, useMemo, useState } from 'react';
import type { KeptState } from '../../lib/analysis/engine/kept/KeptState';
import { useEngine } from '../engine/EngineProvider';
import { useFleetShown } from '../fleet/FirstView';
import { forgetFilesKept, noteFilesKept, wereFilesCleared } from './filesKept';
import { KeptContext } from './useKeptState';
import { useLeaveWarning } from './useLeaveWarning';

/** Follows for all pages how it stands with what is kept in this browser. */
export function KeptProvider({ children }: { readonly children: ReactNode }) {
  const { state: engine, request } = useEngine();
  const [state, setState] = useState<KeptState | null>(null);
  const [isCleared, setCleared] = useState(false);
  useFleetShown();
  // A worker that is gone answers no more: its successor is asked once it works.
  const isWorking = engine.work?.alive === true || engine.fleet !== null;
  useEffect(() => {
    if (!isWorking) return;
    let stale = false;
    const follow = async () => {
      let seen = 0;
      while (!stale) {
        const now = await request.keptState(seen);
        if (stale) return;
        if (seen === 0) setCleared(wereFilesCleared(now));
        else noteFilesKept(now);
        setState(now);
        seen = now.number;
      }
    };
    follow().catch(() => !stale && setState(null));
    return () => {
      stale = true;
    };
  }, [request, isWorking]);
  useLeaveWarning(state);
  const leaveCleared = useCallback(() => {
    forgetFilesKept();
    setCleared(false);
  }, []);
  const kept = useMemo(
    () => ({ state, isCleared: isCleared && state?.files === 0, leaveCleared }),
    [state, isCleared, leaveCleared],
  );
  return <KeptContext value={kept}>{children}</KeptContext>;
}
