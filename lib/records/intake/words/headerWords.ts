import type { Characteristic } from '../../characteristics';
import type { Concept } from './concepts';
import { type Match, matchConcepts } from './matchConcepts';
import { type ReadingWords, readingWords } from './readingWords';
import { type StatedUom, takeUom } from './uomWords';

/** What one column name says, all of its header rows together. */
export interface HeaderWords {
  /** Texts of the header rows, from top to bottom. */
  readonly layers: readonly string[];
  /** What the lowest row says, with 'engine' or 'unit' of a row above where it needs one ('Engine / Hours'). */
  readonly concepts: ReadonlySet<Concept>;
  readonly reading: ReadingWords;
  readonly uom: StatedUom | null;
  /** The end of an interval that a row names: the feeler that goes, or the one that does not. */
  readonly end: 'lower' | 'upper' | null;
  /** Words of the lowest row that are in no dictionary, those in brackets left out. */
  readonly unknownWords: number;
}

interface Layer {
  readonly text: string;
  readonly matches: readonly Match[];
  readonly concepts: ReadonlySet<Concept>;
  readonly words: ReadingWords;
  readonly uom: StatedUom | null;
  readonly unknownWords: number;
}

/** Reads a column name, its header rows joined with ' / '; a lower row goes before a higher one. */
export function headerWords(name: string, characteristics: readonly Characteristic[]): HeaderWords {
  const layers = name
    // '1 / 100 mm' is a fraction, no pair of rows.
    .replace(/(\d) \/ (\d)/g, '$1/$2')
    .split(' / ')
    .map((text) => text.trim())
    .filter((text) => text !== '')
    .map((text) => layerOf(text, characteristics));
  const upwards = [...layers].reverse();
  const lowest = upwards[0];
  return {
    layers: layers.map((layer) => layer.text),
    concepts: roleConcepts(upwards),
    reading: joined(upwards, characteristics),
    uom: upwards.find((layer) => layer.uom !== null)?.uom ?? null,
    end: upwards.map(endOf).find((end) => end !== null) ?? null,
    unknownWords: lowest?.unknownWords ?? 0,
  };
}

function endOf({ concepts }: Layer): HeaderWords['end'] {
  const ends = (['lower', 'upper'] as const).filter((end) => concepts.has(end));
  return ends.length === 1 ? (ends[0] ?? null) : null;
}

function layerOf(text: string, characteristics: readonly Characteristic[]): Layer {
  const { uom, tokens } = takeUom(text);
  const { matches, unknownWords } = matchConcepts(tokens, characteristics);
  const concepts = new Set(matches.flatMap((match) => [...match.concepts]));
  return { text, matches, concepts, words: readingWords(matches, characteristics), uom, unknownWords };
}

function roleConcepts(upwards: readonly Layer[]): ReadonlySet<Concept> {
  const [lowest, ...above] = upwards;
  if (lowest === undefined) return new Set();
  const own = lowest.concepts;
  const open = own.has('hours') || own.has('number') || own.has('serial');
  if (!open || own.has('engine') || own.has('unit')) return own;
  const whose = above.flatMap((layer) =>
    (['engine', 'unit'] as const).filter((concept) => layer.concepts.has(concept)),
  );
  return new Set<Concept>([...own, ...whose.slice(0, 1)]);
}

function joined(upwards: readonly Layer[], characteristics: readonly Characteristic[]): ReadingWords {
  const all = readingWords(
    [...upwards].reverse().flatMap((layer) => layer.matches),
    characteristics,
  );
  const surest = upwards.find((layer) => layer.words.characteristicSureness >= 0.85)?.words;
  const staged = upwards.find((layer) => layer.words.stage !== null || layer.words.stageContradicts)?.words;
  const placed = upwards.find((layer) => layer.words.clock !== null)?.words;
  const characteristic = surest?.characteristic ?? all.characteristic;
  return {
    ...all,
    characteristic,
    characteristicSureness:
      surest?.characteristic != null ? surest.characteristicSureness : all.characteristicSureness,
    stage: staged?.stage ?? null,
    stageContradicts: staged?.stageContradicts ?? false,
    clock: placed === undefined ? null : all.seenFrom === placed.seenFrom ? placed.clock : all.clock,
    clockBySide: placed?.clockBySide ?? false,
    clockIsBare: placed?.clockIsBare ?? false,
  };
}
