import { type Answers, questionOfForm } from '../intake/Answers';
import type { Decision, JournalEntry, MeaningDecision } from './Decision';

/** Who writes to the journal, and when. */
export interface Signature {
  readonly at: string;
  readonly by: string;
}

/** Decisions that hold after all entries, in the order in which each thing was first decided. */
export function decisionsInForce(journal: readonly JournalEntry[]): readonly Decision[] {
  const inForce = new Map<string, Decision>();
  for (const { act, decision } of journal) {
    if (act === 'decided') inForce.set(decision.id, decision);
    else inForce.delete(decision.id);
  }
  return [...inForce.values()];
}

/** The journal with decisions added at its end; one that changes nothing is not written. */
export function withDecisions(
  journal: readonly JournalEntry[],
  decisions: readonly Decision[],
  signature: Signature,
): readonly JournalEntry[] {
  const inForce = byId(journal);
  return appended(
    journal,
    decisions
      .filter((decision) => JSON.stringify(inForce.get(decision.id)) !== JSON.stringify(decision))
      .map((decision) => ({ act: 'decided', decision, before: inForce.get(decision.id) ?? null })),
    signature,
  );
}

/** The journal with the decisions of these ids taken back; ids that are not in force are passed over. */
export function withTakenBack(
  journal: readonly JournalEntry[],
  ids: readonly string[],
  signature: Signature,
): readonly JournalEntry[] {
  const inForce = byId(journal);
  return appended(
    journal,
    ids.flatMap((id) => {
      const decision = inForce.get(id);
      return decision === undefined ? [] : [{ act: 'taken back' as const, decision, before: decision }];
    }),
    signature,
  );
}

/**
 * Answers to questions among the decisions in force.
 *
 * One with a shape holds for its own file if that has the shape, and, if its question is about the form, for every other
 * file of the shape; where such answers contradict each other, other files are asked.
 */
export function answersOf(decisions: readonly Decision[]): Answers {
  const given = decisions.filter((one) => one.kind === 'answer');
  const byId = new Map(given.map((one) => [one.id, one]));
  const byForm = new Map<string, Set<string>>();
  for (const { id, file, shape, answer } of given) {
    const key = shape === undefined ? null : questionOfForm(id, file, shape);
    if (key !== null) byForm.set(key, (byForm.get(key) ?? new Set()).add(answer));
  }
  return ({ id, file }, shape) => {
    const own = byId.get(id);
    if (own !== undefined && (own.shape === undefined || own.shape === shape)) return own.answer;
    const key = shape === undefined ? null : questionOfForm(id, file, shape);
    const [only, second] = key === null ? [] : (byForm.get(key) ?? []);
    return second === undefined ? only : undefined;
  };
}

/** Decided meanings among the decisions in force. */
export function meaningsOf(decisions: readonly Decision[]): readonly MeaningDecision[] {
  return decisions.filter((one) => one.kind === 'meaning');
}

function byId(journal: readonly JournalEntry[]): ReadonlyMap<string, Decision> {
  return new Map(decisionsInForce(journal).map((decision) => [decision.id, decision]));
}

function appended(
  journal: readonly JournalEntry[],
  added: readonly Pick<JournalEntry, 'act' | 'decision' | 'before'>[],
  signature: Signature,
): readonly JournalEntry[] {
  const last = journal.at(-1)?.number ?? 0;
  return [...journal, ...added.map((entry, index) => ({ number: last + index + 1, ...signature, ...entry }))];
}
