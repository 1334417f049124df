'use client';

import { useMemo, useState } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import type { EditedTable } from '../../lib/records/decisions/editedTables';
import type { Draft } from '../../lib/records/tables/tableDraft';

/** Drafts by table; a table that was not edited has none. */
export type Drafts = ReadonlyMap<EditedTable, Draft>;

/** Edits being made, with the way back and forth between them; nothing of it is applied. */
export interface EditedDrafts {
  readonly drafts: Drafts;
  readonly change: (table: EditedTable, draft: Draft) => void;
  readonly dropAll: () => void;
  /** Null where there is no edit to undo, or none that was undone. */
  readonly undo: (() => void) | null;
  readonly redo: (() => void) | null;
}

interface History {
  readonly fleet: FleetResult;
  readonly past: readonly Drafts[];
  readonly drafts: Drafts;
  readonly future: readonly Drafts[];
}

const none: Drafts = new Map();
/** More edits than a hand makes between two looks. */
const longestPast = 500;

/** Edits of the open data's tables; data opened anew start without any. */
export function useDrafts(fleet: FleetResult): EditedDrafts {
  const [kept, setKept] = useState<History>({ fleet, past: [], drafts: none, future: [] });
  const history = useMemo(
    () => (kept.fleet === fleet ? kept : { fleet, past: [], drafts: none, future: [] }),
    [kept, fleet],
  );
  return useMemo(() => {
    const { past, drafts, future } = history;
    const go = (to: Drafts) =>
      setKept({ fleet, past: [...past, drafts].slice(-longestPast), drafts: to, future: [] });
    const [before, after] = [past.at(-1), future.at(-1)];
    return {
      drafts,
      change: (table, draft) => go(new Map([...drafts, [table, draft]])),
      dropAll: () => setKept({ fleet, past: [], drafts: none, future: [] }),
      undo:
        before === undefined
          ? null
          : () => setKept({ fleet, past: past.slice(0, -1), drafts: before, future: [...future, drafts] }),
      redo:
        after === undefined
          ? null
          : () => setKept({ fleet, past: [...past, drafts], drafts: after, future: future.slice(0, -1) }),
    };
  }, [history, fleet]);
}
