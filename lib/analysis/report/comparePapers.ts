import { daysBetween } from '../isoDate';
import type { MetPoint, PaperChange, PaperSummary, UnitOnPaper, Way } from './types';

/** Dates nearer to each other than this are the same in a plan, however narrow their ranges are. */
const leastMove_days = 30;

/** Stands for 'beyond 100,000 h': later than every date. */
const never = '9999-12-31';

/**
 * What changed from one paper to another: units that cannot wait, dates, signals and orders, each in order of name, new before gone.
 *
 * A date counts as moved where each paper's median lies outside the other's range from early to late, 30 days or more apart,
 * unless the limit is past on both. Swapping the papers swaps new with gone; a paper compared with itself gives nothing.
 */
export function comparePapers(before: PaperSummary, after: PaperSummary): readonly PaperChange[] {
  const unitsBefore = byName(before.units, ({ unit }) => unit);
  const unitsAfter = byName(after.units, ({ unit }) => unit);
  const waiting = ({ cannotWait }: UnitOnPaper) => cannotWait;
  return [
    ...differences(before.units.filter(waiting), after.units.filter(waiting), ({ unit }) => unit).map(
      ({ way, name }): PaperChange => ({
        about: 'cannot wait',
        way,
        unit: name,
        before: unitsBefore.get(name) ?? null,
        after: unitsAfter.get(name) ?? null,
      }),
    ),
    ...movedDates(before.units, unitsAfter),
    ...differences(before.findings, after.findings, ({ unit, series }) => `${unit}\u001f${series}`).map(
      ({ one: { unit, series }, name: _, ...rest }): PaperChange => ({
        about: 'signal',
        unit,
        series,
        ...rest,
      }),
    ),
    ...differences(before.ordersDue, after.ordersDue, ({ part }) => part).map(
      ({ name: part, one: _, ...rest }): PaperChange => ({ about: 'order', part, ...rest }),
    ),
  ];
}

function movedDates(
  before: readonly UnitOnPaper[],
  unitsAfter: ReadonlyMap<string, UnitOnPaper>,
): readonly PaperChange[] {
  return before
    .toSorted((a, b) => (a.unit < b.unit ? -1 : 1))
    .flatMap((old): PaperChange[] => {
      const present = unitsAfter.get(old.unit);
      if (present === undefined || !hasMoved(old, present)) return [];
      return [{ about: 'date', way: 'moved', unit: old.unit, before: old, after: present }];
    });
}

/** Whether the date on which a unit meets its first limit has moved by more than either paper's own uncertainty. */
export function hasMoved(before: UnitOnPaper, after: UnitOnPaper): boolean {
  if (before.met === null || after.met === null || (before.pastNow && after.pastNow)) return false;
  const [old, present] = [rangeOf(before.met), rangeOf(after.met)];
  if (old === null || present === null) return false;
  return (
    Math.abs(daysBetween(old.median, present.median)) >= leastMove_days &&
    isOutside(present.median, old) &&
    isOutside(old.median, present)
  );
}

interface Range {
  readonly early: string;
  readonly median: string;
  readonly late: string;
}

function rangeOf({ early, median, late }: NonNullable<UnitOnPaper['met']>): Range | null {
  const [first, middle, last] = [early, median, late].map(dayOf);
  return first == null || middle == null || last == null
    ? null
    : { early: first, median: middle, late: last };
}

function dayOf({ date, beyond }: MetPoint): string | null {
  return beyond ? never : date;
}

function isOutside(date: string, { early, late }: Range): boolean {
  return date < early || date > late;
}

interface Difference<T> {
  readonly way: Way;
  readonly name: string;
  readonly before: T | null;
  readonly after: T | null;
  /** The one of the two that there is. */
  readonly one: T;
}

/** What only one of two lists holds, by name: new ones first. */
function differences<T>(
  before: readonly T[],
  after: readonly T[],
  nameOf: (one: T) => string,
): readonly Difference<T>[] {
  const [old, present] = [byName(before, nameOf), byName(after, nameOf)];
  const added = inOrder([...present].filter(([name]) => !old.has(name)));
  const gone = inOrder([...old].filter(([name]) => !present.has(name)));
  return [
    ...added.map(([name, one]) => ({ way: 'new' as const, name, before: null, after: one, one })),
    ...gone.map(([name, one]) => ({ way: 'gone' as const, name, before: one, after: null, one })),
  ];
}

function inOrder<T>(entries: readonly (readonly [string, T])[]) {
  return entries.toSorted(([a], [b]) => (a < b ? -1 : 1));
}

function byName<T>(list: readonly T[], nameOf: (one: T) => string): ReadonlyMap<string, T> {
  return new Map(list.map((one) => [nameOf(one), one]));
}
