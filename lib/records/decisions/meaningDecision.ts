import type { MeaningDecision } from './Decision';

/** A decision on what a column of a shape of sheet holds; of several on the same column the latest holds. */
export function meaningDecision(about: Omit<MeaningDecision, 'kind' | 'id'>): MeaningDecision {
  return { kind: 'meaning', id: `meaning | ${about.shape} | ${about.index}`, ...about };
}
