import { isAbout } from './acknowledgements';
import type { AcknowledgementDecision, JournalEntry } from './Decision';
import { type Signature, type Targets, withTargets } from './journal';

/** What was done at once: its entries in the journal, in order. */
export interface Step {
  /** Number of its first entry. */
  readonly number: number;
  readonly entries: readonly JournalEntry[];
}

type Source = AcknowledgementDecision['source'];

/** The step that would be undone next, or null if nothing about this data is left to undo. */
export function undoable(journal: readonly JournalEntry[], source: Source): Step | null {
  return stacksOf(journal, source).done.at(-1) ?? null;
}

/** The step that would be done again next, or null: a new decision leaves nothing to do again. */
export function redoable(journal: readonly JournalEntry[], source: Source): Step | null {
  return stacksOf(journal, source).undone.at(-1) ?? null;
}

/** Whether a step holds remarks only, so that no file needs to be read again. */
export function isNoted({ entries }: Step): boolean {
  return entries.every(({ decision }) => decision.kind === 'acknowledgement');
}

/** The journal with a step undone: what held before it holds again. Unchanged unless the step is the next to be undone. */
export function withUndone(
  journal: readonly JournalEntry[],
  number: number,
  signature: Signature,
): readonly JournalEntry[] {
  const step = nextOf(journal, number, undoable);
  return step === null ? journal : withTargets(journal, startOf(step), signature, { undoes: number });
}

/** The journal with an undone step done again. Unchanged unless the step is the next to be done again. */
export function withRedone(
  journal: readonly JournalEntry[],
  number: number,
  signature: Signature,
): readonly JournalEntry[] {
  const step = nextOf(journal, number, redoable);
  return step === null ? journal : withTargets(journal, endOf(step), signature, { redoes: number });
}

/** What held before a step about each thing that it is about. */
function startOf({ entries }: Step): Targets {
  return new Map(entries.toReversed().map(({ decision, before }) => [decision.id, before]));
}

/** What holds after a step about each thing that it is about. */
function endOf({ entries }: Step): Targets {
  return new Map(entries.map(({ act, decision }) => [decision.id, act === 'decided' ? decision : null]));
}

function isSame(a: Targets, b: Targets): boolean {
  return (
    a.size === b.size && [...a].every(([id, target]) => JSON.stringify(target) === JSON.stringify(b.get(id)))
  );
}

/** The step of that number, if it is next for the demo fleet or for the own files. */
function nextOf(journal: readonly JournalEntry[], number: number, next: typeof undoable): Step | null {
  const sources: readonly Source[] = ['own', 'demo'];
  const steps = sources.map((source) => next(journal, source));
  return steps.find((step) => step?.number === number) ?? null;
}

/**
 * Steps about one set of data that are done and those that are undone, each the latest last. What is marked as undoing a step
 * and does not, as may be after journals were merged, counts as a step of its own; one that changes nothing does not count.
 */
function stacksOf(journal: readonly JournalEntry[], source: Source) {
  const done: Step[] = [];
  const undone: Step[] = [];
  for (const step of stepsOf(journal.filter(({ decision }) => isAbout(decision, source)))) {
    if (isSame(startOf(step), endOf(step))) continue;
    const { undoes, redoes } = step.entries[0] ?? {};
    const [from, to] = undoes === undefined ? [undone, done] : [done, undone];
    const moved = from.at(-1);
    const isMoved =
      moved !== undefined &&
      moved.number === (undoes ?? redoes) &&
      isSame(endOf(step), (undoes === undefined ? endOf : startOf)(moved));
    if (isMoved) {
      from.pop();
      to.push(moved);
    } else {
      done.push(step);
      undone.length = 0;
    }
  }
  return { done, undone };
}

/** The journal's steps, in order; what earlier versions wrote at one time is taken as one. */
function stepsOf(journal: readonly JournalEntry[]): readonly Step[] {
  const steps: { number: number; entries: JournalEntry[] }[] = [];
  for (const entry of journal) {
    const before = steps.at(-1)?.entries[0];
    const isOfSame =
      before !== undefined &&
      (entry.step === undefined && before.step === undefined
        ? entry.at === before.at
        : entry.step === before.step);
    if (isOfSame) steps.at(-1)?.entries.push(entry);
    else steps.push({ number: entry.number, entries: [entry] });
  }
  return steps;
}
