import { noChanges } from '../plan/comingOverhauls';
import type { SparesSettings } from './types';

/** Settings that the spares start with; apart from what computes them, so that a page need not carry that. */
export const defaultSparesSettings: SparesSettings = {
  acceptedRisk: 0.1,
  serviceLevel: 0.95,
  reviewPeriod_weeks: 13,
  leadTimeFactor: 1,
  horizonYears: 5,
  changes: noChanges,
};
