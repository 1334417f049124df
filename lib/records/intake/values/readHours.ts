import type { CellReading } from '../types';
import { formulaReason, isFormula } from './formulaText';
import { takeOffMarks } from './marks';
import type { SettledSign } from './numeral';
import { readQuantity } from './readQuantity';
import { longestCell, tidyText } from './tidyText';

const suffix =
  /(?<=[\d)*?!.,]\s*)(?:(?:run(?:ning)?|op(?:erating)?)\.?\s*)?(?:h|hrs?|hours?|b?std|stunden|betriebsstunden|bh|heures?|horas?|hs|t|timer|driftstimer|ч|час(?:а|ов)?|моточас(?:а|ов)?|м\/ч)\.?(?=[*?!\s()]*$)/iu;

/** A text without its suffix for hours ('27100H', '27 100 Std.'), and that suffix or null. */
export function withoutHoursSuffix(text: string): { readonly text: string; readonly suffix: string | null } {
  const tidy = tidyText(text);
  const found = tidy.length > longestCell ? null : suffix.exec(tidy);
  return found === null
    ? { text: tidy, suffix: null }
    : { text: tidy.replace(suffix, '').trim(), suffix: found[0] };
}

const held = (reason: string): CellReading => ({ kind: 'held', reason });

/**
 * Reads running hours (h) from a cell's text under the column's decimal sign: thousands separators, a suffix for hours
 * and marks are taken off and noted. Held: negative hours, ranges, hours with minutes, an exponent (digits are lost),
 * thousands written 'k'.
 */
export function readHours(text: string, sign: SettledSign): CellReading {
  const cell = withoutHoursSuffix(text);
  if (cell.text.length > longestCell) return held('too long for a number');
  if (isFormula(text)) return held(formulaReason);
  const bare = takeOffMarks(cell.text).text;
  if (/\d\s*[:h]\s*\d/i.test(bare)) return held('hours and minutes, or a time of day');
  if (/\d\s*k$/i.test(bare)) return held("thousands written 'k': digits may be lost");
  if (/\de[-+]?\d/i.test(bare)) return held('hours written with an exponent: digits may be lost');
  const reading = readQuantity(cell.text, sign);
  if (reading.kind === 'interval') return held('hours must be one number');
  if (reading.kind !== 'number') return reading;
  if (reading.value < 0) return held('negative hours');
  const notes = [cell.suffix === null ? null : `'${cell.suffix}' taken off`, reading.note].filter(
    (n) => n !== null,
  );
  return { ...reading, note: notes.length === 0 ? null : notes.join('; ') };
}
