'use client';

import { useMemo, useState } from 'react';
import type { ColumnMeaning, UnderstoodSheet } from '../../../lib/analysis/types';
import type { MeaningDecision } from '../../../lib/records/decisions/Decision';
import { meaningDecision } from '../../../lib/records/decisions/meaningDecision';
import { partsOf, placeOf } from '../../../lib/records/intake/columnRoles';

/** What can be said about a column. */
export type Said = Pick<ColumnMeaning, 'role' | 'characteristic' | 'stage' | 'clock' | 'uom'>;

interface MeaningEdits {
  readonly edits: ReadonlyMap<number, Said>;
  /** The edits as decisions, in order of the columns. */
  readonly decisions: readonly MeaningDecision[];
  readonly say: (index: number, said: Said) => void;
}

/** Only what a meaning of the role can say is kept of it. */
function fitting(said: Said, isFourClock: boolean): Said {
  const takes = partsOf(said.role);
  return {
    role: said.role,
    characteristic: takes.includes('characteristic') ? said.characteristic : null,
    stage: takes.includes('stage') ? said.stage : null,
    clock: takes.includes('clock') && isFourClock ? said.clock : null,
    uom: takes.includes('uom') ? said.uom : null,
  };
}

const lengths: ReadonlySet<ColumnMeaning['role']> = new Set(['value', 'lower', 'upper']);

/**
 * The edits, and with them the columns of the overhaul that were let stand as they are shown (unit, date, hours …).
 *
 * These may have been told by the values of this one file, which another of its shape need not show.
 */
export function confirmed(
  { file, shape }: UnderstoodSheet,
  shown: readonly ColumnMeaning[],
  edits: readonly MeaningDecision[],
): readonly MeaningDecision[] {
  const edited = new Set(edits.map(({ index }) => index));
  const letStand = shown
    .filter((column) => !edited.has(column.index) && placeOf(column) !== null && !lengths.has(column.role))
    .map(({ index, name, role }) =>
      meaningDecision({
        file,
        shape,
        index,
        column: name,
        role,
        characteristic: null,
        stage: null,
        clock: null,
        uom: null,
      }),
    );
  return [...edits, ...letStand].sort((a, b) => a.index - b.index);
}

/** What is said about the columns of a sheet and not applied yet. */
export function useMeaningEdits({ file, shape, columns, characteristics }: UnderstoodSheet): MeaningEdits {
  const [edits, setEdits] = useState<ReadonlyMap<number, Said>>(new Map());
  const decisions = useMemo(
    () =>
      columns.flatMap(({ index, name }) => {
        const said = edits.get(index);
        return said === undefined ? [] : [meaningDecision({ file, shape, index, column: name, ...said })];
      }),
    [edits, file, shape, columns],
  );
  const say = (index: number, said: Said) => {
    const single = characteristics.some(
      ({ code, shape: form }) => code === said.characteristic && form === 'single',
    );
    setEdits(new Map(edits).set(index, fitting(said, !single)));
  };
  return { edits, decisions, say };
}
