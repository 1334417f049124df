'use client';

import { useMemo, useSyncExternalStore } from 'react';
import { hiddenColumns, hiddenText, hideColumns, onColumnsChange } from './columnMemory';
import type { DataColumn } from './DataColumn';

/** The columns of a table that its reader looks at, and ways to change them. */
export interface ShownColumns<Data> {
  readonly shown: readonly DataColumn<Data>[];
  readonly toggle: (id: string) => void;
  readonly showAll: () => void;
}

/**
 * The columns that are not hidden; the first one, which names the rows, always stays.
 *
 * The choice holds for all tables of the same columns: captions name units and counts, and change while one looks.
 */
export function useShownColumns<Data>(columns: readonly DataColumn<Data>[]): ShownColumns<Data> {
  const name = columns.map(({ id }) => id).join(' ');
  const text = useSyncExternalStore(
    onColumnsChange,
    () => hiddenText(name),
    () => '',
  );
  return useMemo(() => {
    const hidden = hiddenColumns(text);
    const hides = ({ id }: DataColumn<Data>, place: number) => place > 0 && hidden.has(id);
    const ids = columns.filter(hides).map(({ id }) => id);
    return {
      shown: columns.filter((column, place) => !hides(column, place)),
      toggle: (id) =>
        hideColumns(name, ids.includes(id) ? ids.filter((other) => other !== id) : [...ids, id]),
      showAll: () => hideColumns(name, []),
    };
  }, [columns, name, text]);
}
