import type { MetPoint, PaperChange, UnitOnPaper } from '../../lib/analysis/report/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatChance, formatDate, formatPieces } from '../../lib/charts/format';
import { counted } from './counted';
import { rateWords } from './driftSentence';
import { midSentence, seriesName } from './seriesName';

type Characteristics = FleetResult['characteristics'];

const notOnPaper = 'not in the scope';

/** What a change is about, in words. */
export function changeKind({ about, way }: PaperChange): string {
  if (about === 'cannot wait') return way === 'new' ? 'cannot wait now' : 'can wait now';
  if (about === 'date') return 'date moved';
  if (about === 'signal') return way === 'new' ? 'new signal' : 'signal gone';
  return way === 'new' ? 'order newly due' : 'order no longer due';
}

/** The unit, with its series where a signal is of one, or the part. */
export function changeName(change: PaperChange, characteristics: Characteristics): string {
  if (change.about === 'order') return change.part;
  return change.about === 'signal'
    ? `${change.unit}, ${midSentence(seriesName(change.series, characteristics))}`
    : change.unit;
}

function pointWords({ date, beyond }: MetPoint): string {
  return beyond ? 'beyond' : formatDate(date);
}

function waitWords(unit: UnitOnPaper | null): string {
  if (unit === null) return notOnPaper;
  if (unit.pastNow) return 'past a limit';
  if (unit.nextOverhaulDate === null) return 'no overhaul planned';
  if (unit.chanceAtNextOverhaul === null) return 'no chance known';
  return `${formatChance(unit.chanceAtNextOverhaul)} by ${formatDate(unit.nextOverhaulDate)}`;
}

function metWords(unit: UnitOnPaper, characteristics: Characteristics): string {
  if (unit.met === null) return 'no forecast';
  const { series, early, median, late } = unit.met;
  const name = midSentence(seriesName(series, characteristics));
  return `${pointWords(median)} (${pointWords(early)} to ${pointWords(late)}), ${name}`;
}

/** What stood on the earlier paper, and what stands on this one. */
export function changeStates(
  change: PaperChange,
  characteristics: Characteristics,
): { readonly before: string; readonly after: string } {
  if (change.about === 'cannot wait')
    return { before: waitWords(change.before), after: waitWords(change.after) };
  if (change.about === 'date')
    return {
      before: metWords(change.before, characteristics),
      after: metWords(change.after, characteristics),
    };
  if (change.about === 'signal') {
    const words = (finding: typeof change.before) =>
      finding === null
        ? 'no signal'
        : `${finding.side === 'upper' ? 'high' : 'low'} since ${formatDate(finding.sinceDate)}, by chance ${rateWords(finding.byChance_per_year)}`;
    return { before: words(change.before), after: words(change.after) };
  }
  const words = (order: typeof change.before) =>
    order === null
      ? 'not due'
      : `${formatPieces(order.quantity)} by ${order.orderBy === null ? 'a day not known' : formatDate(order.orderBy)}${order.late ? ', late' : ''}`;
  return { before: words(change.before), after: words(change.after) };
}

/** Whether the unit was opened between the papers: what mostly moves a date; null where the change is about no unit. */
export function openedSince(change: PaperChange): string | null {
  if (change.about !== 'cannot wait' && change.about !== 'date') return null;
  const [before, after] = [change.before, change.after];
  if (before === null || after === null) return null;
  return after.lastOverhaulDate !== null && after.lastOverhaulDate !== before.lastOverhaulDate
    ? `opened on ${formatDate(after.lastOverhaulDate)}`
    : 'not opened since: its sisters’ readings, or the plan';
}

/** How much changed, in a sentence. */
export function changesSentence(changes: readonly PaperChange[], since: string): string {
  const count = (about: PaperChange['about'], way: PaperChange['way']) =>
    changes.filter((change) => change.about === about && change.way === way).length;
  if (changes.length === 0) return `Since ${formatDate(since)} nothing has changed that a plan turns on.`;
  const [newUnits, goneUnits] = [count('cannot wait', 'new'), count('cannot wait', 'gone')];
  const [newSignals, goneSignals] = [count('signal', 'new'), count('signal', 'gone')];
  const [newOrders, goneOrders] = [count('order', 'new'), count('order', 'gone')];
  const moved = count('date', 'moved');
  const words = [
    `${counted(newUnits, 'unit')} newly cannot wait and ${counted(goneUnits, 'unit')} now can`,
    `the date of ${counted(moved, 'unit')} moved by more than its uncertainty`,
    `${counted(newSignals, 'signal')} came and ${counted(goneSignals, 'signal')} went`,
    `${counted(newOrders, 'order is', 'orders are')} newly due and ${counted(goneOrders, 'order')} no longer`,
  ];
  return `Since ${formatDate(since)} ${words.join('; ')}.`;
}
