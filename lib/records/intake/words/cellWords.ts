import type { Characteristic } from '../../characteristics';
import { tokensOf } from './foldText';
import { type Matches, matchConcepts } from './matchConcepts';
import { type Clock, mirrored, readingWords, type Stage } from './readingWords';

/** Clock position that a cell names, and whether the viewing end is left open. */
export interface ClockWord {
  readonly clock: Clock;
  /** A right or left side without the end from which it is seen: 3 and 9 o'clock may change places. */
  readonly viewingEndOpen: boolean;
}

/** Stage that a cell of a long sheet names ('F', 'as left', 'vor Zerlegung'); null if it names none or both. */
export function stageOfWord(text: string): Stage | null {
  const { matches, unknownWords } = matchesOf(text);
  const words = readingWords(matches, []);
  if (unknownWords > 0 || words.clock !== null || words.stageContradicts) return null;
  if (words.lefts > 0) return words.stage === null ? 'left' : null;
  return words.stage;
}

/**
 * Clock position that a cell names ('12', '3 Uhr', 'T', 'links'), seen from the compressor end; null if it names
 * none. Of single letters only T, R, B and L are taken: others mean different sides in different languages.
 */
export function clockOfWord(text: string): ClockWord | null {
  const { matches, unknownWords } = matchesOf(text);
  const words = readingWords(matches, []);
  if (unknownWords > 0 || words.stage !== null || words.lefts > 1) return null;
  if (words.lefts === 1) {
    if (words.clock !== null) return null;
    const clock = words.seenFrom === 'turbine' ? mirrored('9') : '9';
    return { clock, viewingEndOpen: words.seenFrom === null };
  }
  if (words.clock === null) return null;
  return {
    clock: words.clock,
    viewingEndOpen: viewingEndOpen(words.clock, words.clockBySide, words.seenFrom),
  };
}

/** Top and bottom are the same from both ends, and so are hours of the dial, which count from the compressor end. */
export function viewingEndOpen(clock: Clock | null, bySide: boolean, seenFrom: string | null): boolean {
  return bySide && seenFrom === null && (clock === '3' || clock === '9');
}

/** Characteristic that a cell of a long sheet names by code, name or trade word; null if it names none surely. */
export function characteristicOfWord(
  text: string,
  characteristics: readonly Characteristic[],
): Characteristic | null {
  const { matches } = matchConcepts(tokensOf(text), characteristics);
  if (matches.some((match) => match.concepts.has('other'))) return null;
  return readingWords(matches, characteristics).characteristic;
}

/** Kind of overhaul that a cell names; null if it names none or both. */
export function kindOfWord(text: string): 'planned' | 'unplanned' | null {
  const { matches } = matchesOf(text);
  const planned = matches.some((match) => match.concepts.has('planned'));
  const unplanned = matches.some((match) => match.concepts.has('unplanned'));
  return planned === unplanned ? null : planned ? 'planned' : 'unplanned';
}

function matchesOf(text: string): Matches {
  return matchConcepts(tokensOf(text), []);
}
