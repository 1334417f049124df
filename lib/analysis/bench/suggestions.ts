import { type ScaleDoubt, slipsOf } from '../../records/intake/scaleDoubt';
import type { Reading } from './typedReading';

/** A slip of scale that fits, and what would have been typed. */
export interface ScaleSuggestion {
  readonly words: string;
  readonly suggestion: string;
}

/** Longest number whose digits are exchanged. */
const mostDigits = 8;

/**
 * The usual slip of scale that makes a reading fit best, or null if none does.
 *
 * @param misfit how far the reading times a factor lies from what is expected; within 1 it fits
 */
export function scaleSuggestion(
  reading: Reading,
  misfit: (factor: number) => number,
): ScaleSuggestion | null {
  const best = slipsOf(reading.uom)
    .map((slip) => ({ slip, misfit: misfit(slip.factor) }))
    .reduce((one, other) => (other.misfit < one.misfit ? other : one));
  return best.misfit <= 1 ? scaled(reading, best.slip) : null;
}

/** A slip in words, with the reading as it would stand. */
export function scaled({ text, uom, lower, upper }: Reading, { factor, words }: ScaleDoubt): ScaleSuggestion {
  const written = (value: number) => String(Number((value * factor).toPrecision(4)));
  // A unit of measure that was typed with the number stays with it.
  const unit = /[\p{L}"]/u.test(text) ? ` ${uom}` : '';
  if (upper === null) return { words, suggestion: `>${written(lower)}${unit}` };
  const ends = lower === upper ? written(lower) : `${written(lower)}-${written(upper)}`;
  return { words, suggestion: `${ends}${unit}` };
}

/** The number as typed with two neighbouring digits exchanged that fits best, or null if none fits. */
export function digitsExchanged(text: string, misfit: (value: number) => number): string | null {
  const typed = /^\s*(\d*[.,]?\d+)\s*$/.exec(text)?.[1];
  if (typed === undefined || typed.length > mostDigits) return null;
  let best: { readonly text: string; readonly misfit: number } | null = null;
  for (let at = 0; at < typed.length; at++) {
    const next = /[.,]/.test(typed[at + 1] ?? '') ? at + 2 : at + 1;
    const [one, other] = [typed[at] ?? '', typed[next] ?? ''];
    if (!/\d/.test(one) || !/\d/.test(other) || one === other) continue;
    const turned = `${typed.slice(0, at)}${other}${typed.slice(at + 1, next)}${one}${typed.slice(next + 1)}`;
    const off = misfit(Number(turned.replace(',', '.')));
    if (off <= 1 && (best === null || off < best.misfit)) best = { text: turned, misfit: off };
  }
  return best?.text ?? null;
}
