import { formulaReason, isFormula } from './formulaText';
import { takeOffMarks } from './marks';
import { monthNumber } from './monthNames';
import { noneWord } from './noneWord';
import { longestCell, tidyText } from './tidyText';

/** The parts of a date as written, before anything is decided about their order. */
export type DateParts =
  | {
      readonly kind: 'numeric';
      readonly parts: readonly [string, string, string];
      readonly separator: string;
      readonly notes: readonly string[];
    }
  /** A month by name; monthAt says how many of the two numbers stand before it. */
  | {
      readonly kind: 'named';
      readonly numbers: readonly [string, string];
      readonly month: number;
      readonly monthAt: 0 | 1;
      readonly notes: readonly string[];
    }
  | { readonly kind: 'serial'; readonly days: number }
  | { readonly kind: 'none'; readonly word: string | null }
  | { readonly kind: 'held'; readonly reason: string };

const timeOfDay =
  /^(.*?\S)(?:T|[\s,]+(?:at |um |kl\.? ?|\u00E0 |a las |в )?)(\d{1,2})(?:[:.]|\s?h\s?)(\d{2})(?:[:.]\d{2}(?:[.,]\d{1,9})?)?\s*(?:[ap]\.?m\.?|uhr|h|ч\.?)?\s*(?:Z|UTC|GMT|[+-]\d{2}:?\d{2})?$/iu;
const fillers = new Set('st nd rd th er e de del den der le el am of the го г года год an year'.split(' '));

function withoutTime(text: string): { readonly text: string; readonly notes: readonly string[] } {
  const found = timeOfDay.exec(text);
  const isTime = found !== null && Number(found[2]) <= 24 && Number(found[3]) <= 59;
  return isTime ? { text: (found[1] ?? '').trim(), notes: ['time of day ignored'] } : { text, notes: [] };
}

function splitNumeric(text: string, notes: readonly string[]): DateParts | null {
  const separated = /^(\d{1,2}|\d{4})\s?([-/. ])\s?(\d{1,2})\s?\2\s?(\d{1,2}|\d{4})$/.exec(text);
  if (separated !== null) {
    const [, first = '', separator = '', second = '', third = ''] = separated;
    // 4-digit numbers at both ends, or a one-digit year, are no date.
    if (first.length + third.length > 6) return null;
    return { kind: 'numeric', parts: [first, second, third], separator, notes };
  }
  const compact = /^(?:((?:19|20)\d{2})(0\d|1[0-2])([0-3]\d)|([0-3]\d)([0-3]\d)((?:19|20)\d{2}))$/.exec(text);
  if (compact === null) return null;
  const [, year, month = '', day = '', first = '', second = '', last = ''] = compact;
  const parts = year === undefined ? ([first, second, last] as const) : ([year, month, day] as const);
  return { kind: 'numeric', parts, separator: '', notes: [...notes, 'digits without separators'] };
}

function splitNamed(text: string, notes: readonly string[]): DateParts | null {
  if (!/^[\d\p{L}\s.,/'\u00BA-]+$/u.test(text)) return null;
  const tokens = (text.match(/\d+|\p{L}+/gu) ?? []).filter((token) => !fillers.has(token.toLowerCase()));
  const monthAt = tokens.findIndex((token) => !/\d/.test(token));
  const month = monthNumber(tokens[monthAt] ?? '');
  const [first, second, third] = tokens.filter((_, index) => index !== monthAt);
  if (month === null || first === undefined) return null;
  if (second === undefined) return { kind: 'held', reason: 'a day or a year is missing' };
  const isPair = third === undefined && [first, second].every((token) => /^(?:\d{1,2}|\d{4})$/.test(token));
  if (!isPair || monthAt > 1) return null;
  return { kind: 'named', numbers: [first, second], month, monthAt: monthAt === 0 ? 0 : 1, notes };
}

function splitDay(text: string, notes: readonly string[]): DateParts | null {
  const bare = text.replace(/\s*(?:г\.?|года)$/iu, '');
  return splitNumeric(bare, notes) ?? splitNamed(bare, notes);
}

/** Cuts a cell's text into the parts of a date; total. Times of day and marks are taken off and noted. */
export function splitDate(text: string): DateParts {
  const tidy = tidyText(text);
  if (tidy === '') return { kind: 'none', word: null };
  if (tidy.length > longestCell) return { kind: 'held', reason: 'too long for a date' };
  const word = noneWord(tidy);
  if (word !== null) return { kind: 'none', word };
  if (isFormula(tidy)) return { kind: 'held', reason: formulaReason };
  const unmarked = takeOffMarks(tidy.replace(/^'/, ''));
  const whole = unmarked.text.replaceAll('\u2013', '-');
  const day = withoutTime(whole);
  const serial = /^(\d{5})(?:[.,]\d+)?$/.exec(day.text)?.[1];
  if (serial !== undefined && Number(serial) >= 20000 && Number(serial) <= 80000)
    return { kind: 'serial', days: Number(serial) };
  // The whole text first: the end of '14. 03.19' looks like a time of day.
  const split = splitDay(whole, unmarked.notes) ?? splitDay(day.text, [...unmarked.notes, ...day.notes]);
  if (split !== null) return split;
  const isPartial = /^(?:\d{4}|\d{1,2}[-/.]\d{2,4}|\d{4}[-/.]\d{1,2})$/.test(day.text);
  return { kind: 'held', reason: isPartial ? 'a day or a year is missing' : 'not written as a date' };
}
