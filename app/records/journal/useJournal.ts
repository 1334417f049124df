'use client';

import { useEffect, useState } from 'react';
import type { JournalEntry } from '../../../lib/records/decisions/Decision';
import { useEngine } from '../../engine/EngineProvider';
import { listenToJournal } from './journalNews';

/** Every entry of the journal, in order, read again after every work and whenever remarks were undone. */
export function useJournal(): readonly JournalEntry[] {
  const { state, request } = useEngine();
  const [entries, setEntries] = useState<readonly JournalEntry[]>([]);
  const busy = state.work !== null;
  useEffect(() => {
    if (busy) return;
    let stale = false;
    const read = () =>
      void request.journal().then(
        (found) => !stale && setEntries(found),
        () => !stale && setEntries([]),
      );
    read();
    const stop = listenToJournal(read);
    return () => {
      stale = true;
      stop();
    };
  }, [request, busy]);
  return entries;
}
