import { lengthUnitOfCell } from '../../records/intake/values/lengthUnitOfCell';
import type { SettledSign } from '../../records/intake/values/numeral';
import { readHours } from '../../records/intake/values/readHours';
import { readQuantity } from '../../records/intake/values/readQuantity';
import { type LengthUnit, millimetresPer } from '../../records/lengthUnits';

/** One reading as typed, and what it is read as. */
export interface Reading {
  readonly text: string;
  readonly uom: LengthUnit;
  /** In the unit of measure; both ends are the same for a plain reading, upper is null for 'the largest feeler still goes'. */
  readonly lower: number;
  readonly upper: number | null;
  readonly lower_mm: number;
  readonly upper_mm: number | null;
}

export type TypedReading =
  | { readonly kind: 'none' }
  | { readonly kind: 'unreadable'; readonly text: string; readonly reason: string }
  | { readonly kind: 'read'; readonly reading: Reading };

const openAbove = /^\s*(?:>=?|≥)\s*/u;

/** Reads what was typed into a box: decimal comma or point, a unit of measure of its own, a feeler's interval '0.40-0.45' or '>0.40'. */
export function typedReading(text: string, uom: LengthUnit): TypedReading {
  if (text.trim() === '') return { kind: 'none' };
  const unreadable = (reason: string): TypedReading => ({ kind: 'unreadable', text, reason });
  const own = lengthUnitOfCell(text);
  if (own?.kind === 'held') return unreadable(own.reason);
  const stated = own?.kind === 'unit' ? own.uom : uom;
  const bare = own?.kind === 'unit' ? own.text : text;
  const isOpen = openAbove.test(bare);
  const cell = readQuantity(bare.replace(openAbove, ''), typedSign(bare));
  if (cell.kind === 'none') return { kind: 'none' };
  if (cell.kind === 'held') return unreadable(cell.reason);
  if (isOpen && cell.kind !== 'number') return unreadable('one number is needed after ‘>’');
  const [lower, end] = cell.kind === 'number' ? [cell.value, cell.value] : [cell.lower, cell.upper];
  const upper = isOpen ? null : end;
  const factor = millimetresPer[stated];
  return {
    kind: 'read',
    reading: {
      text: text.trim(),
      uom: stated,
      lower,
      upper,
      lower_mm: lower * factor,
      upper_mm: upper === null ? null : upper * factor,
    },
  };
}

/** Middle of a reading, mm: the end that was read where there is no other. */
export function middle_mm({ lower_mm, upper_mm }: Reading): number {
  return upper_mm === null ? lower_mm : (lower_mm + upper_mm) / 2;
}

/** Variance that an interval adds, mm squared: (upper - lower) squared / 12. */
export function intervalVariance({ lower_mm, upper_mm }: Reading): number {
  return upper_mm === null ? 0 : (upper_mm - lower_mm) ** 2 / 12;
}

/** Hours on the unit as typed; '12,480' and '12.480' are thousands. */
export function typedHours(text: string): { readonly hours: number | null; readonly reason: string | null } {
  if (text.trim() === '') return { hours: null, reason: null };
  const thousands = /^\D*\d{1,3}([.,])\d{3}(?:\1\d{3})*\D*$/.exec(text)?.[1];
  const sign = thousands === undefined ? typedSign(text) : thousands === ',' ? 'point' : 'comma';
  const cell = readHours(text, sign);
  if (cell.kind === 'number') return { hours: cell.value, reason: null };
  return { hours: null, reason: cell.kind === 'held' ? cell.reason : 'no hours can be read' };
}

/** The decimal sign of what one person types: the last of comma and point. */
function typedSign(text: string): SettledSign {
  return text.lastIndexOf(',') > text.lastIndexOf('.') ? 'comma' : 'point';
}
