import type { AcknowledgementDecision, Decision } from './Decision';

/** An acknowledgement of the signals of one unit's series up to a day; a later one about the same series takes its place. */
export function acknowledgement(
  about: Omit<AcknowledgementDecision, 'kind' | 'id'>,
): AcknowledgementDecision {
  const { source, unit, series } = about;
  return { kind: 'acknowledgement', id: ['acknowledged', source, unit, series].join(' | '), ...about };
}

/** Acknowledgements among the decisions in force, of one set of data. */
export function acknowledgementsOf(
  decisions: readonly Decision[],
  source: AcknowledgementDecision['source'],
): readonly AcknowledgementDecision[] {
  return decisions.filter((one) => one.kind === 'acknowledgement').filter((one) => one.source === source);
}

/** Whether a decision is about a set of data: acknowledgements say which, all others are about the own files. */
export function isAbout(decision: Decision, source: AcknowledgementDecision['source']): boolean {
  return decision.kind === 'acknowledgement' ? decision.source === source : source === 'own';
}
