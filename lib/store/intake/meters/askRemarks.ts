import { type QuestionList, questionId } from '../../../records/intake/Answers';
import type { RemarkFact } from '../../../records/intake/remarks/RemarkFact';
import { readRemark } from '../../../records/intake/remarks/readRemark';
import { cellsOf, hoursText, isSameEngine, type MeterOverhaul } from './meterRecords';

/** A fact that a remark proposes, and what was answered. */
export interface AskedFact<Fact extends RemarkFact = RemarkFact> {
  readonly fact: Fact;
  /** The overhaul whose remark it is. */
  readonly overhaul: MeterOverhaul;
  readonly answer: 'yes' | 'no' | 'open' | 'incomplete';
  /** Day of the fact as answered, ISO; null where it is not known. */
  readonly day: string | null;
  /** Reading of the engine's meter on that day, h: from the remark, else from another overhaul on the engine that day. */
  readonly engineHours: number | null;
  /** The fact as a sentence: 'the hour meter of E14 was replaced on 2016-08-01 at 75,900 h'. */
  readonly sentence: string;
  /** What an incomplete remark does not say. */
  readonly missing: string;
}

/** Events that the records give already. */
export interface KnownEvent {
  readonly engine: string;
  readonly site: string | null;
  readonly kind: string;
  readonly date: string;
  readonly value: number | null;
}

export const eventKinds = {
  'meter replaced': 'meter_replaced',
  'meter corrected': 'meter_corrected',
} as const;

/** Asks about every fact that the remarks propose, once each; those that the records give already are left out. */
export function askRemarks(
  overhauls: readonly MeterOverhaul[],
  engines: readonly string[],
  events: readonly KnownEvent[],
  questions: QuestionList,
): readonly AskedFact[] {
  const asked: AskedFact[] = [];
  for (const overhaul of overhauls) {
    if (overhaul.remarks === null) continue;
    for (const fact of readRemark(overhaul.remarks, engines)) {
      if (
        fact.kind === 'unit fitted'
          ? overhaul.isPlaced || !overhaul.isDerived
          : isGiven(fact, overhaul, events)
      )
        continue;
      if (asked.some((other) => isRepeated(fact, overhaul, other))) continue;
      asked.push(askFact(fact, overhaul, overhauls, questions));
    }
  }
  return asked;
}

type MeterFact = Exclude<RemarkFact, { kind: 'unit fitted' }>;

/** What the event table takes as the value of the fact. */
export function eventValue(fact: MeterFact): number | null {
  if (fact.kind === 'meter corrected') return fact.hours;
  return fact.lastHours === null ? null : fact.lastHours - fact.newMeterHours;
}

function isGiven(fact: MeterFact, overhaul: MeterOverhaul, events: readonly KnownEvent[]): boolean {
  return events.some(
    (event) =>
      isSameEngine(event, overhaul) &&
      event.kind === eventKinds[fact.kind] &&
      (fact.date === null ? event.value === eventValue(fact) : event.date === fact.date.iso),
  );
}

/** The same event noted again: in the sheet of the other bank, or carried on in later remarks. */
function isRepeated(
  fact: RemarkFact,
  overhaul: MeterOverhaul,
  { fact: other, overhaul: its }: AskedFact,
): boolean {
  if (fact.kind === 'unit fitted' || other.kind !== fact.kind || !isSameEngine(overhaul, its)) return false;
  const isSameDay = fact.date === null || other.date === null || fact.date.iso === other.date.iso;
  return isSameDay && eventValue(fact) === eventValue(other);
}

function askFact(
  fact: RemarkFact,
  overhaul: MeterOverhaul,
  overhauls: readonly MeterOverhaul[],
  questions: QuestionList,
): AskedFact {
  const day = fact.date?.iso ?? (fact.kind === 'unit fitted' ? null : overhaul.date);
  const meter = meterOn(day, fact, overhaul, overhauls);
  const { question, sentence } = wordsOf(fact, overhaul, day, meter.words);
  const common = { fact, overhaul, day, engineHours: meter.hours, sentence };
  const missing = whatIsMissing(fact);
  if (missing !== null) return { ...common, answer: 'incomplete', missing };
  const otherwise = fact.date?.otherwise ?? null;
  const onOtherDay = otherwise === null ? null : `yes, but on ${otherwise}`;
  const isUnits = fact.kind === 'unit fitted';
  const concerned = overhauls.filter(
    (one) => one.unit === overhaul.unit || (!isUnits && isSameEngine(one, overhaul)),
  );
  const answer = questions.ask({
    id: questionId(
      isUnits ? 'unit fitted' : 'meter event',
      overhaul.file,
      overhaul.remarksColumn,
      `line ${overhaul.line} ${sentence}`,
    ),
    file: overhaul.file,
    column: overhaul.remarksColumn,
    question: `${question}, as the note in line ${overhaul.line} says (‘${shortened(fact.text)}’)?`,
    choices: onOtherDay === null ? ['yes', 'no'] : ['yes', onOtherDay, 'no'],
    guess: otherwise === null ? 'yes' : '',
    cellsWaiting: cellsOf(concerned.filter(({ date }) => date >= (day as string))),
  });
  if (answer === null) return { ...common, answer: 'open', missing: '' };
  if (answer !== onOtherDay) return { ...common, answer: answer === 'yes' ? 'yes' : 'no', missing: '' };
  const then = meterOn(otherwise, fact, overhaul, overhauls);
  const onOther = wordsOf(fact, overhaul, otherwise, then.words).sentence;
  return {
    ...common,
    answer: 'yes',
    day: otherwise,
    engineHours: then.hours,
    sentence: onOther,
    missing: '',
  };
}

/** What the engine's meter read when the unit was fitted, and how a question says it. */
function meterOn(
  day: string | null,
  fact: RemarkFact,
  overhaul: MeterOverhaul,
  overhauls: readonly MeterOverhaul[],
): { readonly hours: number | null; readonly words: string } {
  if (fact.kind !== 'unit fitted') return { hours: null, words: '' };
  const meter = 'of the engine’s meter';
  if (fact.engineHours !== null)
    return { hours: fact.engineHours, words: ` at ${hoursText(fact.engineHours)} ${meter}` };
  const read = overhauls.find(
    (one) => one.date === day && one.engineHours !== null && isSameEngine(one, overhaul),
  );
  if (read === undefined || read.engineHours === null) return { hours: null, words: '' };
  return {
    hours: read.engineHours,
    words: ` at the ${hoursText(read.engineHours)} ${meter} in line ${read.line}`,
  };
}

function shortened(text: string): string {
  return text.length > 120 ? `${text.slice(0, 119)}…` : text;
}

function whatIsMissing(fact: RemarkFact): string | null {
  if (fact.kind === 'meter replaced')
    return fact.lastHours === null ? 'the last reading of the old meter' : null;
  if (fact.kind === 'meter corrected') return fact.hours === null ? 'by how many hours' : null;
  return fact.date === null ? 'on which day' : null;
}

function wordsOf(
  fact: RemarkFact,
  { unit, engine, date }: MeterOverhaul,
  day: string | null,
  atMeter: string,
): { readonly question: string; readonly sentence: string } {
  const on = fact.date === null ? `by ${date}` : `on ${day}`;
  if (fact.kind === 'meter replaced') {
    const at = fact.lastHours === null ? '' : ` at ${hoursText(fact.lastHours)}`;
    const start =
      fact.newMeterHours === 0 ? '' : `, the new one starting at ${hoursText(fact.newMeterHours)}`;
    const rest = `the hour meter of ${engine}`;
    return {
      question: `Was ${rest} replaced ${on}${at}${start}`,
      sentence: `${rest} was replaced ${on}${at}${start}`,
    };
  }
  if (fact.kind === 'meter corrected') {
    const by = hoursText(fact.hours ?? 0);
    const rest = `be added to what the hour meter of ${engine} reads from ${day} on`;
    return { question: `Must ${by} ${rest}`, sentence: `${by} must ${rest}` };
  }
  const hours = fact.unitHours === null ? '' : ` with ${hoursText(fact.unitHours)} of its own`;
  const from =
    fact.fromEngine === null || fact.fromEngine === engine ? '' : `, coming from ${fact.fromEngine}`;
  const rest = `fitted on ${engine} ${on}${hours}${atMeter}${from}`;
  return { question: `Was ${unit} ${rest}`, sentence: `${unit} was ${rest}` };
}
