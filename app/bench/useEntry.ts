'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import { type BenchEntry, emptyEntry } from '../../lib/analysis/bench/benchEntry';
import { forgetEntry, keepEntry, keptEntry } from './keptEntry';

export type ChangeEntry = (changes: Partial<BenchEntry>) => void;

/** What is typed of a unit's overhaul, kept in this browser with every key pressed. */
export interface TypedEntry {
  /** Null until it is known whether something was kept. */
  readonly entry: BenchEntry | null;
  readonly change: ChangeEntry;
  /** Leaves what was typed and what was kept of it. */
  readonly discard: () => void;
  /** Leaves what was kept; what was typed stays in sight. */
  readonly forget: () => void;
  /** Why what is typed is not kept; null if it is. */
  readonly notKept: string | null;
}

/** The entry of one unit, as kept in this browser. */
export function useEntry(source: 'demo' | 'own', unit: string): TypedEntry {
  const [entry, setEntry] = useState<BenchEntry | null>(null);
  const [notKept, setNotKept] = useState<string | null>(null);
  const latest = useRef<BenchEntry | null>(null);
  const put = useCallback((next: BenchEntry) => {
    latest.current = next;
    setEntry(next);
  }, []);
  const failed = useCallback((error: unknown) => {
    const cause = error instanceof Error ? error.message : String(error);
    setNotKept(`This browser does not keep what is typed (${cause}): save it before the page is closed.`);
  }, []);
  useEffect(() => {
    let stale = false;
    keptEntry(source, unit).then(
      (kept) => !stale && put(kept ?? emptyEntry(unit)),
      (error: unknown) => {
        if (stale) return;
        failed(error);
        put(emptyEntry(unit));
      },
    );
    return () => {
      stale = true;
    };
  }, [source, unit, put, failed]);
  const change = useCallback<ChangeEntry>(
    (changes) => {
      if (latest.current === null) return;
      const next = { ...latest.current, ...changes };
      put(next);
      keepEntry(source, next).then(() => setNotKept(null), failed);
    },
    [source, put, failed],
  );
  const forget = useCallback(() => {
    forgetEntry(source, unit).catch(failed);
  }, [source, unit, failed]);
  const discard = useCallback(() => {
    put(emptyEntry(unit));
    forget();
  }, [unit, put, forget]);
  return { entry, change, discard, forget, notKept };
}
