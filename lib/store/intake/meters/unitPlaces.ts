import { group } from 'd3-array';
import { type QuestionList, questionId } from '../../../records/intake/Answers';
import type { RemarkFact } from '../../../records/intake/remarks/RemarkFact';
import type { AskedFact } from './askRemarks';
import { cellsOf, hoursText, isSamePosition, type MeterOverhaul } from './meterRecords';
import { withEnds } from './stayEnds';

type FittedFact = Extract<RemarkFact, { kind: 'unit fitted' }>;

/** A stay of a unit in a position, as answered. */
export interface Stay {
  /** The overhaul whose line told of it. */
  readonly told: MeterOverhaul;
  readonly from: string;
  readonly to: string | null;
  readonly engineHoursAtFit: number | null;
  /** 'meter': from new on this engine, so the meter's hours are its own; null: what it had when it left the engine before. */
  readonly unitHoursAtFit: number | 'meter' | null;
  readonly sentence: string;
  /** Whether a question of its own settled it rather than a remark. */
  readonly isFromNew: boolean;
}

/** Overhauls that cannot be placed yet, and why. */
export interface Unplaced {
  readonly id: number;
  readonly reason: string;
}

export interface UnitPlaces {
  readonly stays: readonly Stay[];
  readonly unplaced: readonly Unplaced[];
}

/** What the places of units are made from. */
export interface PlaceRecords {
  readonly overhauls: readonly MeterOverhaul[];
  readonly asked: readonly AskedFact[];
  readonly questions: QuestionList;
  /** Continuous hours of the engine at an overhaul, h; null while an event before it is open. */
  readonly hoursFromNew: (overhaul: MeterOverhaul) => number | null;
}

/** Makes stays of the units whose place no installation row tells: from answered remarks, and by asking what they had. */
export function unitPlaces(records: PlaceRecords): UnitPlaces {
  const stays: Stay[] = [];
  const unplaced: Unplaced[] = [];
  const open = records.overhauls.filter(({ isDerived, isPlaced }) => isDerived && !isPlaced);
  for (const rows of group(open, ({ unit }) => unit).values()) {
    const placed = placesOfUnit(rows, records);
    stays.push(...withEnds(placed.stays, rows, records));
    unplaced.push(...placed.unplaced);
  }
  return { stays, unplaced };
}

/** Stretches of a unit's overhauls in one position, in order of date. */
function stretchesOf(rows: readonly MeterOverhaul[]): readonly (readonly MeterOverhaul[])[] {
  const stretches: MeterOverhaul[][] = [];
  for (const row of rows) {
    const last = stretches.at(-1);
    if (last !== undefined && isSamePosition(last[0] as MeterOverhaul, row)) last.push(row);
    else stretches.push([row]);
  }
  return stretches;
}

function placesOfUnit(rows: readonly MeterOverhaul[], records: PlaceRecords): UnitPlaces {
  const stays: Stay[] = [];
  const unplaced: Unplaced[] = [];
  for (const stretch of stretchesOf(rows)) {
    const first = stretch[0] as MeterOverhaul;
    const facts = records.asked.filter(
      (one): one is AskedFact<FittedFact> =>
        one.fact.kind === 'unit fitted' && stretch.includes(one.overhaul),
    );
    const fitted = facts
      .filter(({ answer }) => answer === 'yes')
      .sort((a, b) => ((a.day as string) < (b.day as string) ? -1 : 1));
    if (!fitted.some(({ day }) => (day as string) <= first.date)) {
      const start = startOf(first, stretch, facts, records);
      if ('reason' in start)
        unplaced.push(...stretch.filter(beforeFirst(fitted)).map(({ id }) => ({ id, reason: start.reason })));
      else stays.push(start);
    }
    for (const fact of fitted) {
      const stay = stayFrom(fact, records);
      if ('reason' in stay)
        unplaced.push(
          ...stretch
            .filter(({ date }) => date >= (fact.day as string))
            .map(({ id }) => ({ id, reason: stay.reason })),
        );
      else stays.push(stay);
    }
    for (const fact of facts.filter(({ answer }) => answer === 'open' || answer === 'incomplete')) {
      const since = fact.day ?? fact.overhaul.date;
      unplaced.push(
        ...stretch.filter(({ date }) => date >= since).map(({ id }) => ({ id, reason: whyOpen(fact) })),
      );
    }
  }
  return { stays, unplaced };
}

function beforeFirst(fitted: readonly AskedFact[]): (row: MeterOverhaul) => boolean {
  const day = fitted[0]?.day ?? null;
  return ({ date }) => day === null || date < day;
}

/** Why an overhaul waits for a remark of its unit or engine. */
export function whyOpen({ answer, sentence, overhaul, missing }: AskedFact): string {
  return answer === 'open'
    ? `waits for an answer: is it so that ${sentence}?`
    : `the note in line ${overhaul.line} says that ${sentence}, but not ${missing}: give it in events.csv or installations.csv`;
}

/** Whether a unit was overhauled before the day, so that it cannot have been new then. */
function hasPast(unit: string, day: string, overhauls: readonly MeterOverhaul[]): boolean {
  return overhauls.some((one) => one.unit === unit && one.date < day);
}

/** How the first stay of a stretch without a remark on it began: from new on this engine, or not known. */
function startOf(
  first: MeterOverhaul,
  stretch: readonly MeterOverhaul[],
  facts: readonly AskedFact[],
  { overhauls, questions, hoursFromNew }: PlaceRecords,
): Stay | { readonly reason: string } {
  const { unit, engine, date, file } = first;
  const give = 'give a row of installations.csv with engine_hours_at_fit and unit_hours_at_fit';
  const doubt = facts.find(({ answer }) => answer === 'open' || answer === 'incomplete');
  if (doubt !== undefined) return { reason: whyOpen(doubt) };
  const before = overhauls.find((one) => one.unit !== unit && one.date < date && isSamePosition(one, first));
  if (before !== undefined || hasPast(unit, date, overhauls)) {
    const other = before === undefined ? '' : `: ${before.unit} was there before it`;
    return { reason: `when and with how many hours ${unit} came to ${engine} is not known${other}; ${give}` };
  }
  const hours = hoursFromNew(first);
  if (hours === null) return { reason: `waits for an answer on the hour meter of ${engine} before ${date}` };
  const answer = questions.ask({
    id: questionId('hours when fitted', file, first.hoursColumn, `${unit} ${engine} from new`),
    file,
    column: first.hoursColumn,
    question: `Was ${unit} on ${engine} from new, so that its hours at ${date} are the ${hoursText(hours)} of the meter?`,
    choices: ['yes', 'no'],
    guess: '',
    cellsWaiting: cellsOf(stretch),
  });
  if (answer === null) return { reason: `waits for an answer: was ${unit} on ${engine} from new?` };
  if (answer === 'no')
    return {
      reason: `${unit} was not on ${engine} from new, as answered: when and with how many hours it came is not known; ${give}`,
    };
  return {
    told: first,
    from: date,
    to: null,
    engineHoursAtFit: first.engineHours,
    unitHoursAtFit: 'meter',
    sentence: `${unit} was on ${engine} from new: its hours at ${date} are the ${hoursText(hours)} of the meter`,
    isFromNew: true,
  };
}

/** The stay that an answered remark tells of; asks whether a unit without a past was new. */
function stayFrom(
  { fact, overhaul, day, engineHours, sentence }: AskedFact<FittedFact>,
  { overhauls, questions }: PlaceRecords,
): Stay | { readonly reason: string } {
  const from = day as string;
  const { unit, engine, file, hoursColumn } = overhaul;
  const stay = { told: overhaul, from, to: null, engineHoursAtFit: engineHours, sentence, isFromNew: false };
  if (fact.unitHours !== null || hasPast(unit, from, overhauls))
    return { ...stay, unitHoursAtFit: fact.unitHours };
  const answer = questions.ask({
    id: questionId('hours when fitted', file, hoursColumn, `${unit} ${engine} new on ${from}`),
    file,
    column: hoursColumn,
    question: `Was ${unit} new, with 0 h, when it was fitted on ${engine} on ${from}?`,
    choices: ['yes', 'no'],
    guess: '',
    cellsWaiting: cellsOf(overhauls.filter((one) => one.unit === unit && one.date >= from)),
  });
  if (answer === 'yes') return { ...stay, unitHoursAtFit: 0, sentence: `${sentence}, new` };
  return {
    reason:
      answer === null
        ? `waits for an answer: was ${unit} new when it was fitted on ${engine} on ${from}?`
        : `the hours of ${unit} when it was fitted on ${engine} on ${from} are not known: it was not new, as answered; give unit_hours_at_fit in installations.csv`,
  };
}
