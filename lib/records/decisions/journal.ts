import { type Answers, questionOfForm } from '../intake/Answers';
import type { Decision, JournalEntry, MeaningDecision } from './Decision';

/** Who writes to the journal, and when. */
export interface Signature {
  readonly at: string;
  readonly by: string;
}

/** What is to hold about each thing, by id: a decision, or null for none. */
export type Targets = ReadonlyMap<string, Decision | null>;

/** Whether entries undo or do again an earlier step. */
export type StepMark = Pick<JournalEntry, 'undoes' | 'redoes'>;

/**
 * Decisions that hold after all entries, in the order in which each thing was first decided: what is taken back and decided
 * again, as by undoing, has its old place.
 */
export function decisionsInForce(journal: readonly JournalEntry[]): readonly Decision[] {
  const latest = new Map<string, Decision | null>();
  for (const { act, decision } of journal) latest.set(decision.id, act === 'decided' ? decision : null);
  return [...latest.values()].filter((decision) => decision !== null);
}

/** The journal with one step at its end after which each thing is as its target says; what is so already is not written. */
export function withTargets(
  journal: readonly JournalEntry[],
  targets: Targets,
  signature: Signature,
  mark: StepMark = {},
): readonly JournalEntry[] {
  const inForce = new Map(decisionsInForce(journal).map((decision) => [decision.id, decision]));
  const last = journal.at(-1)?.number ?? 0;
  const added = [...targets].flatMap(
    ([id, target]): readonly Pick<JournalEntry, 'act' | 'decision' | 'before'>[] => {
      const before = inForce.get(id) ?? null;
      if (JSON.stringify(before) === JSON.stringify(target)) return [];
      if (target !== null) return [{ act: 'decided', decision: target, before }];
      return before === null ? [] : [{ act: 'taken back', decision: before, before }];
    },
  );
  return [
    ...journal,
    ...added.map((entry, index) => ({
      number: last + index + 1,
      ...signature,
      ...entry,
      step: last + 1,
      ...mark,
    })),
  ];
}

/** The journal with decisions added at its end; one that changes nothing is not written. */
export function withDecisions(
  journal: readonly JournalEntry[],
  decisions: readonly Decision[],
  signature: Signature,
): readonly JournalEntry[] {
  return withTargets(journal, new Map(decisions.map((one) => [one.id, one])), signature);
}

/** The journal with the decisions of these ids taken back; ids that are not in force are passed over. */
export function withTakenBack(
  journal: readonly JournalEntry[],
  ids: readonly string[],
  signature: Signature,
): readonly JournalEntry[] {
  return withTargets(journal, new Map(ids.map((id) => [id, null])), signature);
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
