'use client';

import { useMemo, useState } from 'react';
import type { Problem } from '../../../lib/analysis/types';
import type { RulingDecision } from '../../../lib/records/decisions/Decision';
import { rulingId } from '../../../lib/records/decisions/rulings';

/** What is ruled, before it is put on a place. */
export type Ruled = Pick<RulingDecision, 'ruling' | 'text' | 'reason'>;

/** Rulings being made; nothing of it is applied yet. */
export interface Rulings {
  /** Held rows ticked for one ruling on all of them, by place. */
  readonly selected: ReadonlyMap<string, Problem>;
  readonly opened: Problem | null;
  readonly made: ReadonlyMap<string, RulingDecision>;
  readonly select: (problems: readonly Problem[], isSelected: boolean) => void;
  readonly open: (problem: Problem | null) => void;
  /** Rules on held rows; null puts them back. */
  readonly rule: (problems: readonly Problem[], ruled: Ruled | null) => void;
  readonly putAllBack: () => void;
}

const none = { selected: new Map<string, Problem>(), opened: null, made: new Map<string, RulingDecision>() };

/** Id of the place of a held row; several reasons may hold one place. */
export function placeOf({ file, row, column }: Problem): string {
  return rulingId({ file, line: row, column });
}

/** Rulings being made on the listed problems; a new list starts without any. */
export function useRulings(problems: readonly Problem[]): Rulings {
  const [state, setState] = useState<
    Pick<Rulings, 'selected' | 'opened' | 'made'> & { readonly problems: readonly Problem[] }
  >({ problems, ...none });
  const current = state.problems === problems ? state : { problems, ...none };
  return useMemo(
    () => ({
      selected: current.selected,
      opened: current.opened,
      made: current.made,
      select(about, isSelected) {
        const selected = new Map(current.selected);
        for (const problem of about) {
          if (isSelected) selected.set(placeOf(problem), problem);
          else selected.delete(placeOf(problem));
        }
        setState({ ...current, selected });
      },
      open: (opened) => setState({ ...current, opened }),
      rule(about, ruled) {
        const made = new Map(current.made);
        const selected = new Map(current.selected);
        for (const problem of about) {
          const { file, row: line, column, raw } = problem;
          const id = placeOf(problem);
          selected.delete(id);
          if (ruled === null) made.delete(id);
          else made.set(id, { kind: 'ruling', id, file, line, column, raw, ...ruled, by: '' });
        }
        setState({ ...current, made, opened: null, selected });
      },
      putAllBack: () => setState({ ...current, made: none.made }),
    }),
    [current],
  );
}
