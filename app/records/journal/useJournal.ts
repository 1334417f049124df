'use client';

import { useEffect, useState } from 'react';
import type { JournalEntry } from '../../../lib/records/decisions/Decision';
import { useEngine } from '../../engine/EngineProvider';

/** Every entry of the journal, in order, read again after every work. */
export function useJournal(): readonly JournalEntry[] {
  const { state, request } = useEngine();
  const [entries, setEntries] = useState<readonly JournalEntry[]>([]);
  const busy = state.work !== null;
  useEffect(() => {
    if (busy) return;
    let stale = false;
    request.journal().then(
      (found) => !stale && setEntries(found),
      () => !stale && setEntries([]),
    );
    return () => {
      stale = true;
    };
  }, [request, busy]);
  return entries;
}
