import type { Characteristic } from '../../characteristics';
import { type Concept, dictionaries } from './concepts';
import { type Token, tokensOf } from './foldText';
import { splitCompound } from './splitCompound';

/** A word or phrase of a text and what it can stand for. */
export interface Match {
  readonly concepts: ReadonlySet<Concept>;
  /** Code of a characteristic that is named by its own code or name. */
  readonly code: string | null;
  /** One letter only, such as T or R, or a bare number: a place only beside a characteristic. */
  readonly letter: boolean;
  /** A number of the dial, with or without 'o'clock'. */
  readonly number: boolean;
}

/** The matches of a text in order, and how many of its words are in no dictionary (words in brackets are not counted). */
export interface Matches {
  readonly matches: readonly Match[];
  readonly unknownWords: number;
}

interface Phrase {
  readonly words: readonly string[];
  readonly concept: Concept;
}

const phrases: readonly Phrase[] = dictionaries.flatMap((words) =>
  (Object.entries(words) as [Concept, string][]).flatMap(([concept, list]) =>
    list.split(',').map((phrase) => ({ words: wordsOf(phrase), concept })),
  ),
);

/** Words of a phrase, the star of an open ending kept. */
function wordsOf(phrase: string): readonly string[] {
  return phrase
    .trim()
    .split(/\s+/)
    .flatMap((part) => {
      const words = tokensOf(part.replace('*', '')).map((token) => token.word);
      return part.endsWith('*') ? words.map((word) => `${word}*`) : words;
    });
}

/** Phrases by their first word; those that begin with an open ending apart. */
const byFirstWord = new Map<string, Phrase[]>();
for (const phrase of phrases) {
  const first = phrase.words[0] ?? '';
  byFirstWord.set(first, [...(byFirstWord.get(first) ?? []), phrase]);
}
const openPhrases = phrases.filter((phrase) => phrase.words[0]?.endsWith('*') === true);

const vocabulary: ReadonlySet<string> = new Set(
  phrases.flatMap((phrase) => phrase.words.map((word) => word.replace('*', ''))),
);
const clockNumbers = new Map<string, Concept>([
  ['12', '12'],
  ['3', '3'],
  ['03', '3'],
  ['6', '6'],
  ['06', '6'],
  ['9', '9'],
  ['09', '9'],
]);

/** Finds what the words of a text stand for: at each word the longest phrase, names of characteristics before others. */
export function matchConcepts(tokens: readonly Token[], characteristics: readonly Characteristic[]): Matches {
  const named = namesOf(characteristics);
  const ownWords = new Set(named.flatMap((name) => name.words));
  const isKnown = (word: string) => vocabulary.has(word) || ownWords.has(word);
  const parts = tokens.flatMap((token) => splitCompound(token, isKnown));
  const words = parts.map((part) => part.word);
  const matches: Match[] = [];
  let unknownWords = 0;
  for (let at = 0; at < words.length; ) {
    const name = longest(named.filter((candidate) => agreement(candidate.words, words, at) !== null));
    const hits = phrasesAt(words, at);
    const length = Math.max(0, ...hits.map((phrase) => phrase.words.length));
    const number = clockNumbers.get(words[at] ?? '');
    if (name !== null && name.words.length > 0 && name.words.length >= length) {
      matches.push({ concepts: new Set(), code: name.code, letter: false, number: false });
      at += name.words.length;
    } else if (number !== undefined) {
      const dial = dialWords(words, at + 1);
      matches.push({
        concepts: new Set(dial > 0 ? [number, 'clock_word'] : [number]),
        code: null,
        letter: dial === 0,
        number: true,
      });
      at += 1 + dial;
    } else if (length > 0) {
      const long = hits.filter((phrase) => phrase.words.length === length);
      const exact = long.filter((phrase) => agreement(phrase.words, words, at) === 'exact');
      const concepts = new Set((exact.length > 0 ? exact : long).map((phrase) => phrase.concept));
      if (concepts.has('hours')) concepts.delete('clock_word');
      matches.push({ concepts, code: null, letter: length === 1 && words[at]?.length === 1, number: false });
      at += length;
    } else {
      if (parts[at]?.bracketed === false) unknownWords += 1;
      at += 1;
    }
  }
  return { matches, unknownWords };
}

interface Name {
  readonly words: readonly string[];
  readonly code: string;
}

const namesByList = new WeakMap<readonly Characteristic[], readonly Name[]>();

/** Codes and names of the characteristics, cut once a list. */
function namesOf(characteristics: readonly Characteristic[]): readonly Name[] {
  const cut =
    namesByList.get(characteristics) ??
    characteristics.flatMap(({ code, name }) =>
      [code, name].map((text) => ({ words: tokensOf(text).map((token) => token.word), code })),
    );
  namesByList.set(characteristics, cut);
  return cut;
}

function phrasesAt(words: readonly string[], at: number): readonly Phrase[] {
  return [...(byFirstWord.get(words[at] ?? '') ?? []), ...openPhrases].filter(
    (phrase) => agreement(phrase.words, words, at) !== null,
  );
}

function longest<T extends { readonly words: readonly string[] }>(candidates: readonly T[]): T | null {
  return candidates.reduce<T | null>(
    (best, candidate) => (best === null || candidate.words.length > best.words.length ? candidate : best),
    null,
  );
}

function agreement(
  pattern: readonly string[],
  words: readonly string[],
  at: number,
): 'exact' | 'open' | null {
  let kind: 'exact' | 'open' = 'exact';
  for (let index = 0; index < pattern.length; index += 1) {
    const [want, have] = [pattern[index], words[at + index]];
    if (want === undefined || have === undefined) return null;
    if (want === have) continue;
    if (!want.endsWith('*') || !have.startsWith(want.slice(0, -1))) return null;
    if (have !== want.slice(0, -1)) kind = 'open';
  }
  return kind;
}

/** How many words after a number say that it is an hour of the dial: 'o'clock', 'Uhr', 'h', '00'. */
function dialWords(words: readonly string[], at: number): number {
  if (words[at] === '00' || words[at] === '0') return 1;
  const dial = phrasesAt(words, at).filter((phrase) => phrase.concept === 'clock_word');
  return longest(dial)?.words.length ?? 0;
}
