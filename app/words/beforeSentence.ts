import type { FleetResult } from '../../lib/analysis/types';

/** Said while an answer is shown that was computed before; null where nothing is shown. */
export function beforeSentence(fleet: FleetResult | null): string | null {
  if (fleet === null) return null;
  return fleet.source === 'demo'
    ? 'What is shown was computed when this site was built; it is being computed again here, from the records.'
    : 'What is shown is the answer of last time, from the same files and decisions; it is being computed again.';
}
