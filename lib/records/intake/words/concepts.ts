import { english } from './english';
import { french } from './french';
import { german } from './german';
import { norwegian } from './norwegian';
import { russian } from './russian';
import { spanish } from './spanish';

/** What a word or phrase of a header or cell can stand for. */
export type Concept =
  | 'thrust_play'
  /** Only half said ('axial'): thrust play if nothing speaks against it. */
  | 'thrust_hint'
  | 'runout'
  | 'nut_stand_out'
  /** Tip clearance without doubt; which wheel is said by 'compressor' or 'turbine'. */
  | 'tip'
  /** Any clearance; a tip clearance only together with a wheel. */
  | 'gap'
  | 'compressor'
  | 'turbine'
  | 'found'
  | 'left'
  /** English 'left' and 'L': the stage as left, or the left-hand side. */
  | 'left_or_side'
  | '12'
  | '3'
  | '6'
  | '9'
  /** Stands beside a number of hours on the dial: 'o'clock', 'Uhr'. */
  | 'clock_word'
  | 'seen_from'
  | 'hours'
  | 'engine'
  | 'unit'
  | 'serial'
  | 'number'
  | 'frame'
  | 'type'
  | 'site'
  | 'bank'
  | 'workshop'
  | 'kind'
  | 'planned'
  | 'unplanned'
  | 'fitted'
  | 'remarks'
  | 'revision'
  | 'overhaul'
  | 'characteristic'
  | 'stage'
  | 'position'
  | 'value'
  | 'uom'
  | 'lower'
  | 'upper'
  | 'date'
  /** Largest or smallest of several: a limit, or a summary of readings. */
  | 'extreme'
  /** Makes a column something else than a reading, a date or hours of an overhaul. */
  | 'other'
  /** Bearings, seals and other places where a clearance is no tip clearance. */
  | 'elsewhere'
  /** Says nothing by itself. */
  | 'filler';

/** Words of one language: phrases parted by commas; a word that ends in * stands for every ending. */
export type Words = Readonly<Partial<Record<Concept, string>>>;

export const dictionaries: readonly Words[] = [english, german, french, spanish, norwegian, russian];
