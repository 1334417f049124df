import type { Characteristic } from '../../characteristics';
import { wideColumn } from '../../wideColumns';
import type { ColumnMeaning, ColumnRole } from '../types';
import { type HeaderWords, headerWords } from './headerWords';
import { allowReadings, canonicalRole, onlyPlaces, roleOfWords } from './roleWords';

/** A column's meaning while it is worked out, with the words that it comes from. */
export interface ColumnDraft extends ColumnMeaning {
  readonly words: HeaderWords;
  /** What the header was taken for, in plain words; evidence is written from it at the end. */
  readonly clauses: readonly string[];
  readonly isCanonical: boolean;
  /** Names no characteristic but a stage or position: belongs to a neighbour or to a cell. */
  readonly isPartial: boolean;
  /** Of a reading: the column holds only this end of it, as an interval. */
  readonly end: HeaderWords['end'];
  /** The header says what the column is, though it has no role here: its values are not asked. */
  readonly isSettled: boolean;
}

/** First meaning of a column, by its own header alone. */
export function columnDraft(
  index: number,
  name: string,
  characteristics: readonly Characteristic[],
): ColumnDraft {
  const words = headerWords(name, characteristics);
  const blank: ColumnDraft = {
    index,
    name,
    role: 'unused',
    characteristic: null,
    stage: null,
    clock: null,
    viewingEndOpen: false,
    uom: words.uom === 'unknown' ? null : words.uom,
    uomUnknown: words.uom === 'unknown',
    evidence: '',
    sureness: 0,
    words,
    clauses: [],
    isCanonical: false,
    isPartial: false,
    end: words.end,
    isSettled: false,
  };
  return canonical(blank, characteristics) ?? ofReading(blank) ?? ofRole(blank);
}

function canonical(blank: ColumnDraft, characteristics: readonly Characteristic[]): ColumnDraft | null {
  const wide = wideColumn(blank.name, characteristics);
  const role = canonicalRole(blank.name);
  if (wide === null && role === null) return null;
  const shared = { ...blank, sureness: 1, isCanonical: true, isSettled: true };
  if (wide === null)
    return { ...shared, role: role ?? 'unused', uom: null, clauses: [`canonical column ${role}`] };
  return {
    ...shared,
    role: 'reading',
    characteristic: wide.characteristic,
    stage: wide.stage,
    clock: blank.words.reading.clock ?? (wide.clock as ColumnDraft['clock']),
    end: null,
    uom: wide.uom,
    uomUnknown: false,
    clauses: [`canonical name of ${wide.characteristic} as ${wide.stage} in ${wide.uom}`],
  };
}

function ofReading(blank: ColumnDraft): ColumnDraft | null {
  const { concepts, reading, unknownWords } = blank.words;
  if (!allowReadings(concepts)) return null;
  if (concepts.has('other'))
    return reading.characteristic === null ? null : noReading(blank, 'a limit, difference or other figure');
  const { characteristic } = reading;
  if (characteristic === null) {
    const says = reading.stage !== null || reading.clock !== null || reading.lefts > 0;
    return says && onlyPlaces(concepts) && unknownWords === 0 ? { ...blank, isPartial: true } : null;
  }
  if (concepts.has('extreme') && (characteristic.shape === 'four_clock' || reading.stage === null)) {
    return noReading(blank, 'a largest, smallest or mean figure, no single reading');
  }
  return {
    ...blank,
    role: 'reading',
    characteristic: characteristic.code,
    stage: reading.stage,
    clock: reading.clock,
    sureness: reading.characteristicSureness * (concepts.has('extreme') ? 0.8 : 1) * coverage(unknownWords),
    clauses: [characteristic.name.toLowerCase(), ...(blank.end === null ? [] : [endWords[blank.end]])],
    isSettled: true,
  };
}

/** What a column of one end of a reading holds. */
export const endWords = { lower: 'the feeler that goes', upper: 'the feeler that does not go' } as const;

function noReading(blank: ColumnDraft, what: string): ColumnDraft {
  const { characteristic } = blank.words.reading;
  const of = characteristic === null ? '' : ` of ${characteristic.name.toLowerCase()}`;
  return { ...blank, sureness: 0.8, clauses: [`${what}${of}`], isSettled: true };
}

function ofRole(blank: ColumnDraft): ColumnDraft {
  const { concepts, unknownWords } = blank.words;
  if (concepts.has('other') && !concepts.has('remarks')) {
    return { ...blank, sureness: 0.8, clauses: ['something else than what is looked for'], isSettled: true };
  }
  const role = roleOfWords(concepts);
  if (role === null) return blank;
  const lengths: readonly ColumnRole[] = ['value', 'lower', 'upper'];
  return {
    ...blank,
    role: role.role,
    uom: lengths.includes(role.role) ? blank.uom : null,
    sureness: role.sureness * coverage(unknownWords),
    clauses: [role.meaning],
    isSettled: true,
  };
}

/** Each word that is in no dictionary makes a header less sure, by 15 % down to 55 %. */
function coverage(unknownWords: number): number {
  return 1 - 0.15 * Math.min(unknownWords, 3);
}
