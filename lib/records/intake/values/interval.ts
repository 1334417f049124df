import type { CellReading } from '../types';
import { type Numeral, readNumeral, type SettledSign } from './numeral';

const held = (reason: string): CellReading => ({ kind: 'held', reason });

const below =
  /^(?:<=?|\u2264|less than|under|below|weniger als|unter|kleiner|moins de|menos de|mindre enn|под|менее|меньше)\s*/iu;
const above =
  /^(?:>=?|\u2265|more than|over|above|mehr als|\u00FCber|gr\u00F6\u00DFer|plus de|m\u00E1s de|mer enn|st\u00F8rre enn|более|больше|свыше)\s*/iu;

const range =
  /^(?:(?:from|von|de|desde|fra|от)\s+)?(\S.*?)\s*(?:\.{2,3}|[-\u2013\u2014\u2026\u00F7]|\s(?:to|bis|\u00E0|a|til|до)\s)\s*(\S.*)$/iu;
const between = /^(?:between|zwischen|entre|mellom|между)\s+(\S.*?)\s+(?:and|und|et|y|og|и)\s+(\S.*)$/iu;

const doesNotGo =
  /(?<!\p{L})(?:does ?n[o']t (?:go|pass)|does not (?:go|pass)|not go|no[- ]?go|geht nicht|ne passe pas|no pasa|g\u00E5r ikke|не проходит)(?!\p{L})/giu;
const goes = /(?<!\p{L})(?:goes|go|passes|geht|passe|pasa|g\u00E5r|проходит)(?!\p{L})/giu;
const written = '(\\d+(?:[.,]\\d+)?|[.,]\\d+)';
const between2 = '[\\s,;:/|]*(?:(?:and|but|und|et|y|og|men|и|а|но|aber|mais|pero)\\s+)?';
const wordFirst = new RegExp(`^([+-])[:\\s]*${written}${between2}([+-])[:\\s]*${written}$`, 'iu');
const numberFirst = new RegExp(`^${written}\\s*([+-])${between2}${written}\\s*([+-])$`, 'iu');

/** '0.45-50' may be short for 0.45-0.50: as many digits as the lower end has decimals, and more than they say. */
function mayBeShort(lower: Numeral, upper: Numeral): boolean {
  return (
    upper.decimals === '' &&
    upper.whole.length === lower.decimals.length &&
    Number(upper.whole) > Number(lower.decimals)
  );
}

function fromEnds(lower: Numeral, upper: Numeral, note: string): CellReading {
  if (lower.value >= upper.value) return held('a range whose second end is not above its first');
  if (mayBeShort(lower, upper))
    return held('a range that may be written short: both ends are needed in full');
  if ([lower, upper].some((end) => end.decimals === '' && /^0\d/.test(end.whole)))
    return held('a range or part of a date');
  const notes = [note, lower.note, upper.note].filter((each) => each !== null);
  return { kind: 'interval', lower: lower.value, upper: upper.value, note: [...new Set(notes)].join('; ') };
}

function goesAndDoesNot(text: string, sign: SettledSign): CellReading | null {
  // Hyphens have no place between these words and their numbers, so - and + can stand for them.
  const marked = text.replaceAll(doesNotGo, '\u0001').replaceAll(goes, '+').replaceAll('\u0001', '-');
  if (marked === text) return null;
  const first = wordFirst.exec(marked);
  const last = numberFirst.exec(marked);
  const pairs = first
    ? [first[1], first[2], first[3], first[4]]
    : [last?.[2], last?.[1], last?.[4], last?.[3]];
  const [wordA, textA, wordB, textB] = pairs;
  if (wordA === undefined || wordA === wordB)
    return held('a feeler reading needs one that goes and one that does not');
  const a = readNumeral(textA ?? '', sign);
  const b = readNumeral(textB ?? '', sign);
  if (a === null || b === null) return held('a feeler reading whose numbers cannot be read');
  const [passed, stopped] = wordA === '+' ? [a, b] : [b, a];
  return passed.value < stopped.value
    ? fromEnds(passed, stopped, 'read as an interval: goes, does not go')
    : held('the feeler that does not go is not thicker than the one that goes');
}

/**
 * Reads an interval from a tidied text: '<0.02' (0 to 0.02), '0.45-0.50', '0.45 to 0.50', 'goes 0.40 / does not go 0.45'
 * in six languages; null if the text is written as none of them. Held: '>' (no upper end), ends the wrong way round,
 * an upper end that may be written short.
 */
export function readInterval(text: string, sign: SettledSign): CellReading | null {
  if (above.test(text)) return held('an interval needs both ends: nothing says how far above');
  if (below.test(text)) {
    const upper = readNumeral(text.replace(below, ''), sign);
    if (upper === null) return held("no number can be read after '<'");
    if (upper.value === 0) return held('a length below 0');
    const note = ["'below' read as from 0 up to the number", upper.note]
      .filter((each) => each !== null)
      .join('; ');
    return { kind: 'interval', lower: 0, upper: upper.value, note };
  }
  const ends = between.exec(text) ?? range.exec(text);
  const lower = readNumeral(ends?.[1] ?? '', sign);
  const upper = readNumeral(ends?.[2] ?? '', sign);
  if (lower !== null && upper !== null) return fromEnds(lower, upper, 'read as an interval');
  return goesAndDoesNot(text, sign);
}
