import type { Decision, RulingDecision } from './Decision';

/** Where a ruling belongs: a cell, or a whole line if the column is empty. */
export interface RuledPlace {
  readonly file: string;
  readonly line: number;
  readonly column: string;
}

/** Id of the ruling about a place: there is one at a time. */
export function rulingId({ file, line, column }: RuledPlace): string {
  return ['ruling', file, line, column].join(' | ');
}

/** Rulings among decisions. */
export function rulingsOf(decisions: readonly Decision[]): readonly RulingDecision[] {
  return decisions.filter((one) => one.kind === 'ruling');
}

/** What came of a ruling when the files were read. */
export interface RulingOutcome extends RuledPlace {
  readonly id: string;
  /** Why it changed nothing, or null if it was applied. */
  readonly notApplied: string | null;
}
