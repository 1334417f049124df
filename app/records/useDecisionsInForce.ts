'use client';

import { useMemo } from 'react';
import type { Decision } from '../../lib/records/decisions/Decision';
import { decisionsInForce } from '../../lib/records/decisions/journal';
import { useJournal } from './journal/useJournal';

/** What holds of all that was decided about the own files, read again after every work. */
export function useDecisionsInForce(): readonly Decision[] {
  const entries = useJournal();
  return useMemo(() => decisionsInForce(entries), [entries]);
}
