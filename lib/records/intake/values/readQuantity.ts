import type { CellReading } from '../types';
import { formulaReason, isFormula } from './formulaText';
import { readInterval } from './interval';
import { takeOffMarks } from './marks';
import { noneWord } from './noneWord';
import { readNumeral, type SettledSign } from './numeral';
import { longestCell, tidyText } from './tidyText';

/** Reads a number with its sign: '-', '+', or accounting brackets for a minus. */
function readSigned(text: string, sign: SettledSign): CellReading | null {
  const bracketed = /^\(\s*([^()]*?)\s*\)$/.exec(text)?.[1];
  const signed = /^([-+\u2013]?)(.*)$/su.exec(text);
  const numeral = readNumeral(bracketed ?? (/^\s/.test(signed?.[2] ?? ' ') ? '' : (signed?.[2] ?? '')), sign);
  if (numeral === null) return null;
  const dash = bracketed === undefined && signed?.[1] === '\u2013' ? 'dash read as minus' : null;
  const brackets = bracketed === undefined ? null : 'brackets read as minus';
  const isNegative = brackets !== null || (signed?.[1] ?? '') === '-' || dash !== null;
  const notes = [brackets, dash, numeral.note].filter((note) => note !== null);
  return {
    kind: 'number',
    value: isNegative && numeral.value !== 0 ? -numeral.value : numeral.value,
    note: notes.length === 0 ? null : notes.join('; '),
  };
}

function whyUnreadable(text: string, sign: SettledSign): string {
  if (!/\d/.test(text)) return 'no number in the cell';
  if (text.includes('\u00B1')) return 'a number with a tolerance';
  const numbers = text.match(/\d[\d.,']*/g) ?? [];
  const besides = text.replaceAll(/\d[\d.,']*|(?<!\p{L})(?:and|und|et|y|og|и)(?!\p{L})|[\s/;|&,.+]/giu, '');
  if (numbers.length > 1 && besides === '') return 'several readings, or a fraction, in one cell';
  if (/\p{L}/u.test(text)) return 'words or letters beside the number';
  if (/^[-+(]*[\d.,' ]+\)?$/.test(text))
    return `not one number with a decimal ${sign} (a thousands separator needs groups of three digits)`;
  return 'not written as one number';
}

const withNotes = (reading: CellReading, notes: readonly string[]): CellReading => {
  if (notes.length === 0 || (reading.kind !== 'number' && reading.kind !== 'interval')) return reading;
  return { ...reading, note: [...notes, reading.note].filter((note) => note !== null).join('; ') };
};

/**
 * Reads a quantity without unit from a cell's text under the column's decimal sign; total, never a guess: what is
 * not written as one number or interval is held with its reason, words for 'not measured' are none, formulas are held.
 */
export function readQuantity(text: string, sign: SettledSign): CellReading {
  const tidy = tidyText(text);
  if (tidy === '') return { kind: 'none', word: null };
  if (tidy.length > longestCell) return { kind: 'held', reason: 'too long for a number' };
  const word = noneWord(tidy);
  if (word !== null) return { kind: 'none', word };
  if (isFormula(tidy)) return { kind: 'held', reason: formulaReason };
  if (tidy.startsWith('#')) return { kind: 'held', reason: "a spreadsheet's error, not a number" };
  const asText = /^'(?=.)/.test(tidy) ? ['leading apostrophe taken off'] : [];
  const unmarked = takeOffMarks(tidy.replace(/^'/, '').trim());
  const reading = readSigned(unmarked.text, sign) ?? readInterval(unmarked.text, sign);
  return reading === null
    ? { kind: 'held', reason: whyUnreadable(unmarked.text, sign) }
    : withNotes(reading, [...asText, ...unmarked.notes]);
}
