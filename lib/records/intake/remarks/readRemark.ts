import { type MaskedRemark, maskedRemark, type RemarkHours } from './maskedRemark';
import type { RemarkDate, RemarkFact } from './RemarkFact';
import { engineCameFrom, says } from './remarkWords';

/** What one clause is about; numbers and days of a clause about nothing belong to the clause before. */
type Topic = 'meter replaced' | 'meter corrected' | 'unit fitted' | 'came with';

interface Part {
  readonly topic: Topic;
  readonly clauses: string[];
}

/**
 * Reads the remark of an overhaul into the facts that it seems to state of the engine's hour meter and of the unit's place:
 * meter replaced, meter corrected, unit fitted (exchanged, moved). Each is a proposal to be asked; what is denied or only
 * planned is none, and a number that could be one of several is left out. Total.
 *
 * @param text the remark as written, in English, German, French, Spanish, Norwegian or Russian
 * @param engines names of the engines in the records
 */
export function readRemark(text: string, engines: readonly string[]): readonly RemarkFact[] {
  const remark = maskedRemark(text, engines);
  const parts = partsOf(remark.clauses);
  const shown = text.trim().replaceAll(/\s+/g, ' ');
  const facts: RemarkFact[] = [];
  for (const part of parts) {
    if (part.topic === 'meter replaced') facts.push(replaced(part, remark, shown));
    if (part.topic === 'meter corrected') facts.push(corrected(part, remark, shown));
  }
  const fitted = unitFitted(parts, remark, shown);
  return fitted === null ? facts : [...facts, fitted];
}

function partsOf(clauses: readonly string[]): readonly Part[] {
  const parts: Part[] = [];
  const isMoved = clauses.some((clause) => engineCameFrom(clause) !== null);
  for (const clause of clauses) {
    if (says(clause, 'denied')) continue;
    const topic = topicOf(clause, isMoved);
    const last = parts.at(-1);
    if (topic !== null && (topic !== last?.topic || isOfItsOwn(clause, last)))
      parts.push({ topic, clauses: [clause] });
    else last?.clauses.push(clause);
  }
  return parts;
}

/** A second event of one kind: the clause gives a day where one is given already. */
function isOfItsOwn(clause: string, { topic, clauses }: Part): boolean {
  const isMeters = topic === 'meter replaced' || topic === 'meter corrected';
  return isMeters && /§d\d/.test(clause) && clauses.some((other) => /§d\d/.test(other));
}

function topicOf(clause: string, isMoved: boolean): Topic | null {
  if (says(clause, 'meter')) {
    if (says(clause, 'corrected')) return 'meter corrected';
    return says(clause, 'replaced') ? 'meter replaced' : null;
  }
  if (says(clause, 'part')) return null;
  const isOfUnit = says(clause, 'unit') || says(clause, 'here');
  if (says(clause, 'fitted') && (isOfUnit || isMoved)) return 'unit fitted';
  if (says(clause, 'unit') && says(clause, 'replaced') && !/§e/.test(clause)) return 'unit fitted';
  if (engineCameFrom(clause) !== null) return 'unit fitted';
  return says(clause, 'cameWith') && /§h\d/.test(clause) ? 'came with' : null;
}

function datesIn(part: Part, { dates }: MaskedRemark): readonly RemarkDate[] {
  return part.clauses.flatMap((clause) =>
    [...clause.matchAll(/§d(\d+)§/g)].map((found) => dates[Number(found[1])] as RemarkDate),
  );
}

function hoursIn(clauses: readonly string[], { hours }: MaskedRemark): readonly RemarkHours[] {
  return clauses.flatMap((clause) =>
    [...clause.matchAll(/§h(\d+)§/g)].map((found) => hours[Number(found[1])] as RemarkHours),
  );
}

/** The one number that can be meant: one that is said to be hours goes before bare ones; of several none. */
function onlyHours(candidates: readonly RemarkHours[]): number | null {
  const named = candidates.filter(({ isNamed }) => isNamed);
  const [only, second] = named.length > 0 ? named : candidates;
  return only === undefined || second !== undefined ? null : only.hours;
}

const onlyDate = (dates: readonly RemarkDate[]): RemarkDate | null =>
  dates.length === 1 ? (dates[0] as RemarkDate) : null;

function replaced(part: Part, remark: MaskedRemark, text: string): RemarkFact {
  const starts = part.clauses.filter((clause) => says(clause, 'startsAt'));
  const others = part.clauses.filter((clause) => !starts.includes(clause));
  const isApart = others.length > 0;
  return {
    kind: 'meter replaced',
    date: onlyDate(datesIn(part, remark)),
    lastHours: onlyHours(hoursIn(isApart ? others : part.clauses, remark)),
    newMeterHours: (isApart ? onlyHours(hoursIn(starts, remark)) : null) ?? 0,
    text,
  };
}

function corrected(part: Part, remark: MaskedRemark, text: string): RemarkFact {
  const candidates = hoursIn(part.clauses, remark);
  const signed = candidates.filter(({ isSigned }) => isSigned);
  return {
    kind: 'meter corrected',
    date: onlyDate(datesIn(part, remark)),
    hours: onlyHours(signed.length > 0 ? signed : candidates),
    text,
  };
}

/** The clauses on the unit's place and hours together make one fact. */
function unitFitted(parts: readonly Part[], remark: MaskedRemark, text: string): RemarkFact | null {
  const fitted = parts.filter(({ topic }) => topic === 'unit fitted');
  if (fitted.length === 0) return null;
  const came = parts.filter(({ topic }) => topic === 'came with');
  const clauses = fitted.flatMap((part) => part.clauses);
  const from = clauses.map(engineCameFrom).find((engine) => engine !== null) ?? null;
  const withHours = clauses.filter((clause) => comesWith.test(clause));
  const atHours = clauses.filter((clause) => !withHours.includes(clause));
  const dates = [...fitted, ...came].flatMap((part) => datesIn(part, remark));
  return {
    kind: 'unit fitted',
    date: onlyDate(dates),
    engineHours: onlyHours(hoursIn(atHours, remark)),
    unitHours: onlyHours(hoursIn([...came.flatMap((part) => part.clauses), ...withHours], remark)),
    fromEngine: from === null ? null : (remark.engines[from] ?? null),
    text,
  };
}

/** Hours right after a word for 'with' are the unit's own, not the engine's. */
const comesWith = /(?<!\p{L})(?:with|mit|avec|con|med|с|с наработкой)\s+(?:\p{L}+\s+)?§h\d+§/u;
