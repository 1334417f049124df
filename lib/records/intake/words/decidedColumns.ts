import type { MeaningDecision } from '../../decisions/Decision';
import { lengthUnits } from '../../lengthUnits';
import { columnRole, partsOf, placeOf } from '../columnRoles';
import type { ColumnDraft } from './columnDraft';

/** Evidence of a meaning that a person decided. */
export function saidOn(file: string): string {
  return `said by you on ${file}`;
}

/**
 * Puts what a person decided in place of the columns' own meanings; where only one column can have a role, the others lose it.
 *
 * @param guesses the columns as they would be read by themselves: an open viewing end and an unknown unit of measure stay
 *   open where the decision leaves clock position or unit of measure as they were
 */
export function withDecided(
  drafts: readonly ColumnDraft[],
  guesses: readonly ColumnDraft[],
  decided: readonly MeaningDecision[],
): readonly ColumnDraft[] {
  if (decided.length === 0) return drafts;
  const said = new Map(decided.map((decision) => [decision.index, decision]));
  const put = drafts.map((draft, index) => {
    const decision = said.get(index);
    return decision === undefined ? draft : decidedDraft(draft, guesses[index] ?? draft, decision);
  });
  const holders = new Map<string, ColumnDraft>();
  for (const draft of put) {
    const place = placeOf(draft);
    if (place !== null && said.has(draft.index)) holders.set(place, draft);
  }
  return put.map((draft) => {
    const place = placeOf(draft);
    const holder = place === null || said.has(draft.index) ? undefined : holders.get(place);
    return holder === undefined
      ? draft
      : {
          ...draft,
          role: 'unused',
          sureness: Math.min(draft.sureness, 0.5),
          isSettled: true,
          clauses: [...draft.clauses, `but column "${holder.name}" is it, as said by you`],
        };
  });
}

function decidedDraft(draft: ColumnDraft, guess: ColumnDraft, decision: MeaningDecision): ColumnDraft {
  const role = columnRole(decision.role) ?? 'unused';
  const takes = partsOf(role);
  const clock = takes.includes('clock') ? decision.clock : null;
  const uom = takes.includes('uom') ? (lengthUnits.find((unit) => unit === decision.uom) ?? null) : null;
  return {
    ...draft,
    role,
    characteristic: takes.includes('characteristic') ? decision.characteristic : null,
    stage: takes.includes('stage') ? decision.stage : null,
    clock,
    viewingEndOpen: clock !== null && clock === guess.clock && guess.viewingEndOpen,
    uom,
    uomUnknown: takes.includes('uom') && uom === null && guess.uomUnknown,
    sureness: 1,
    clauses: [saidOn(decision.file)],
    // As good as a canonical name: nothing that follows may change or doubt it.
    isCanonical: true,
    isPartial: false,
    end: null,
    isSettled: true,
  };
}
