import type { Decision, JournalEntry } from '../decisions/Decision';
import { type Signature, withTargets } from '../decisions/journal';

/** Two people decided differently about the same thing: the last entry of each about it. */
export interface Conflict {
  readonly id: string;
  readonly ours: JournalEntry;
  readonly theirs: JournalEntry;
  readonly later: Side;
}

export type Side = 'ours' | 'theirs';

/**
 * What two journals disagree on. Where one has all that the other says about a thing and goes on from it, that one holds and
 * there is no conflict.
 */
export function journalConflicts(
  ours: readonly JournalEntry[],
  theirs: readonly JournalEntry[],
): readonly Conflict[] {
  const ourHistories = histories(ours);
  return [...histories(theirs)].flatMap(([id, theirHistory]) => {
    const ourHistory = ourHistories.get(id);
    if (ourHistory === undefined || wentOn(ourHistory, theirHistory) !== null) return [];
    const [ourLast, theirLast] = [lastOf(ourHistory), lastOf(theirHistory)];
    if (holdsAfter(ourLast) === holdsAfter(theirLast)) return [];
    return [{ id, ours: ourLast, theirs: theirLast, later: ourLast.at >= theirLast.at ? 'ours' : 'theirs' }];
  });
}

/**
 * One journal of two: every entry of both, those that both have once, in order of time. Where another state than the merged
 * history ends with is to hold, an entry at the end says so.
 *
 * @param choices whose decision holds, by id; the later one where none is given
 * @param signature of the entries that the choices add
 */
export function mergeJournals(
  ours: readonly JournalEntry[],
  theirs: readonly JournalEntry[],
  choices: ReadonlyMap<string, Side>,
  signature: Signature,
): readonly JournalEntry[] {
  const merged = interleaved(ours, theirs);
  const conflicts = new Map(journalConflicts(ours, theirs).map((one) => [one.id, one]));
  const [ourHistories, theirHistories] = [histories(ours), histories(theirs)];
  const targets = new Map<string, Decision | null>();
  for (const [id, last] of new Map(merged.map((entry) => [entry.decision.id, entry]))) {
    const conflict = conflicts.get(id);
    const wanted =
      conflict !== undefined
        ? conflict[choices.get(id) ?? conflict.later]
        : agreed(ourHistories.get(id), theirHistories.get(id));
    if (wanted !== undefined && holdsAfter(wanted) !== holdsAfter(last))
      targets.set(id, wanted.act === 'decided' ? wanted.decision : null);
  }
  return withTargets(merged, targets, signature);
}

type History = readonly JournalEntry[];

/** The last entry about a thing on which two histories do not disagree. */
function agreed(ours: History | undefined, theirs: History | undefined): JournalEntry | undefined {
  if (ours === undefined || theirs === undefined) return (ours ?? theirs)?.at(-1);
  return (wentOn(ours, theirs) ?? ours).at(-1);
}

/** Of two histories of one thing the one that holds every entry of the other and more, or both if they are one; null if they part. */
function wentOn(ours: History, theirs: History): History | null {
  const [shorter, longer] = ours.length <= theirs.length ? [ours, theirs] : [theirs, ours];
  const known = new Set(longer.map(written));
  const isIncluded = shorter.every((entry) => known.has(written(entry)));
  // The same entries in another order need not come to the same end.
  const mayDiffer =
    shorter.length === longer.length && holdsAfter(lastOf(ours)) !== holdsAfter(lastOf(theirs));
  return isIncluded && !mayDiffer ? longer : null;
}

function lastOf(history: History): JournalEntry {
  return history.at(-1) as JournalEntry;
}

function histories(journal: readonly JournalEntry[]): ReadonlyMap<string, History> {
  const found = new Map<string, JournalEntry[]>();
  for (const entry of journal) {
    const history = found.get(entry.decision.id);
    if (history === undefined) found.set(entry.decision.id, [entry]);
    else history.push(entry);
  }
  return found;
}

/** Every entry of both, each journal in its own order and theirs among ours by time, with new numbers and what held before each. */
function interleaved(
  ours: readonly JournalEntry[],
  theirs: readonly JournalEntry[],
): readonly JournalEntry[] {
  const known = new Map(ours.map((entry) => [written(entry), entry]));
  const all = inOwnOrder(ours, theirs, known);
  const placed = new Map(all.map((entry, index) => [entry, index + 1]));
  const ourNumbers = new Map(ours.map((entry) => [entry.number, placed.get(entry)]));
  const theirNumbers = new Map(
    theirs.map((entry) => [entry.number, placed.get(known.get(written(entry)) ?? entry)]),
  );
  const isOurs = new Set(ours);
  const inForce = new Map<string, Decision>();
  return all.map((entry, index) => {
    const { act, decision, step, undoes, redoes, ...rest } = entry;
    const before = inForce.get(decision.id) ?? null;
    if (act === 'decided') inForce.set(decision.id, decision);
    else inForce.delete(decision.id);
    const numbers = isOurs.has(entry) ? ourNumbers : theirNumbers;
    const marks = Object.entries({ step, undoes, redoes }).flatMap(([name, number]) => {
      const moved = number === undefined ? undefined : numbers.get(number);
      return moved === undefined ? [] : [[name, moved]];
    });
    return { ...rest, number: index + 1, act, decision, before, ...Object.fromEntries(marks) };
  });
}

/** Clocks of two machines differ, and one may be set back: times decide only where the order of neither journal does. */
function inOwnOrder(
  ours: History,
  theirs: History,
  known: ReadonlyMap<string, JournalEntry>,
): readonly JournalEntry[] {
  const places = new Map(ours.map((entry, index) => [entry, index]));
  const before: JournalEntry[][] = Array.from({ length: ours.length + 1 }, () => []);
  let place = 0;
  for (const entry of theirs) {
    const shared = known.get(written(entry));
    if (shared !== undefined) place = Math.max(place, (places.get(shared) as number) + 1);
    else {
      while (place < ours.length && (ours[place] as JournalEntry).at <= entry.at) place++;
      before[place]?.push(entry);
    }
  }
  return before.flatMap((entries, index) => [...entries, ...ours.slice(index, index + 1)]);
}

/** What holds about a thing after an entry, as text that compares. */
function holdsAfter({ act, decision }: JournalEntry): string {
  return act === 'taken back' ? '' : inOrder(decision);
}

/** An entry as text that is the same wherever it was read from. */
function written({ at, by, act, decision }: JournalEntry): string {
  return JSON.stringify([at, by, act, inOrder(decision)]);
}

/** A decision as text that does not depend on the order in which its parts were put. */
function inOrder(decision: Decision): string {
  return JSON.stringify(decision, (_, value: unknown) =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
      : value,
  );
}
