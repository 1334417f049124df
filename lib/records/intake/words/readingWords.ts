import { type Characteristic, clockPositions } from '../../characteristics';
import type { Concept } from './concepts';
import type { Match } from './matchConcepts';

export type Stage = 'found' | 'left';
export type Clock = (typeof clockPositions)[number];

/** What a text says about a reading. */
export interface ReadingWords {
  readonly characteristic: Characteristic | null;
  /** How surely the words mean the characteristic, 0 to 1. */
  readonly characteristicSureness: number;
  readonly stage: Stage | null;
  /** Both stages are named, or 'before assembly' and the like: neither is taken. */
  readonly stageContradicts: boolean;
  readonly clock: Clock | null;
  /** The position is said by a side, not by an hour of the dial. */
  readonly clockBySide: boolean;
  /** The position is a bare number or letter, which alone need not be one. */
  readonly clockIsBare: boolean;
  readonly seenFrom: 'compressor' | 'turbine' | null;
  /** The one wheel that is named, beside the viewing end. */
  readonly wheel: 'compressor' | 'turbine' | null;
  /** How often 'left' or 'L' stands there, each time the stage or the side. */
  readonly lefts: number;
}

/** Reads the matches of one text: characteristic, stage, clock position and the end it is seen from. */
export function readingWords(
  matches: readonly Match[],
  characteristics: readonly Characteristic[],
): ReadingWords {
  const { seenFrom, rest } = viewingEnd(matches);
  const has = (concept: Concept) => rest.some((match) => match.concepts.has(concept));
  const [code, characteristicSureness] = characteristicCode(rest, has);
  const places = rest.filter((match) => clockPositions.some((clock) => match.concepts.has(clock)));
  const named = clockPositions.filter((clock) => places.some((match) => match.concepts.has(clock)));
  const place = named.length === 1 ? (named[0] ?? null) : null;
  const stages = (['found', 'left'] as const).filter(has);
  return {
    characteristic: characteristics.find((candidate) => candidate.code === code) ?? null,
    characteristicSureness,
    stage: stages.length === 1 ? (stages[0] ?? null) : null,
    stageContradicts: stages.length === 2,
    clock: place !== null && seenFrom === 'turbine' ? mirrored(place) : place,
    clockBySide: place !== null && places.every((match) => !match.number),
    clockIsBare: place !== null && places.every((match) => match.letter),
    seenFrom,
    wheel: wheelOf(has),
    lefts: rest.filter((match) => match.concepts.has('left_or_side')).length,
  };
}

/** Seen from the other end, 3 and 9 o'clock change places. */
export function mirrored(clock: Clock): Clock {
  return clock === '3' ? '9' : clock === '9' ? '3' : clock;
}

/** The first wheel after 'seen from', else the last before it, is the viewing end and no place of measurement. */
function viewingEnd(matches: readonly Match[]): {
  readonly seenFrom: 'compressor' | 'turbine' | null;
  readonly rest: readonly Match[];
} {
  const isWheel = (match: Match) => match.concepts.has('compressor') || match.concepts.has('turbine');
  const at = matches.findIndex((match) => match.concepts.has('seen_from'));
  if (at < 0) return { seenFrom: null, rest: matches };
  const after = matches.findIndex((match, index) => index > at && isWheel(match));
  const wheel = after >= 0 ? after : matches.findLastIndex((match, index) => index < at && isWheel(match));
  const match = matches[wheel];
  if (match === undefined) return { seenFrom: null, rest: matches };
  return {
    seenFrom: match.concepts.has('compressor') ? 'compressor' : 'turbine',
    rest: matches.filter((_, index) => index !== wheel),
  };
}

function characteristicCode(
  matches: readonly Match[],
  has: (concept: Concept) => boolean,
): readonly [string | null, number] {
  const own = matches.find((match) => match.code !== null);
  if (own !== undefined) return [own.code, 0.95];
  if (has('thrust_play')) return ['thrust_play', 0.95];
  if (has('nut_stand_out')) return ['nut_stand_out', 0.95];
  if (has('runout')) return ['runout', 0.95];
  if (has('thrust_hint') && has('gap')) return ['thrust_play', 0.85];
  const named = wheelOf(has);
  const wheel = named === null ? null : `tip_${named}`;
  if (has('tip')) return [wheel, 0.95];
  if (has('gap') && !has('elsewhere')) return [wheel, 0.85];
  if (has('gap')) return [null, 0];
  if (wheel !== null && clockPositions.some(has)) return [wheel, 0.65];
  return has('thrust_hint') ? ['thrust_play', 0.6] : [null, 0];
}

function wheelOf(has: (concept: Concept) => boolean): 'compressor' | 'turbine' | null {
  const wheels = (['compressor', 'turbine'] as const).filter(has);
  return wheels.length === 1 ? (wheels[0] ?? null) : null;
}
