import type { LengthUnit } from '../lengthUnits';

/** What a distinct text of a column came to; texts in the file are joined with these in SQL. */
export interface CellOutcome {
  readonly text: string;
  /** used: canonical values below; none: no reading; held: cannot be read; waiting: a question is open. */
  readonly outcome: 'used' | 'none' | 'held' | 'waiting';
  /** Canonical text of the value: a number with decimal point, an ISO date, a word of the schema. */
  readonly value: string | null;
  readonly lower: string | null;
  readonly upper: string | null;
  /** Unit of measure written in the cell. */
  readonly uom: LengthUnit | null;
  /** Why it is held or waits, or how it was interpreted. */
  readonly note: string | null;
}

/** A value used as it was read. */
export function used(text: string, value: string, note: string | null = null): CellOutcome {
  return { text, outcome: 'used', value, lower: null, upper: null, uom: null, note };
}

/** A cell that is held or waits. */
export function unused(text: string, outcome: 'held' | 'waiting' | 'none', note: string | null): CellOutcome {
  return { text, outcome, value: null, lower: null, upper: null, uom: null, note };
}
