import type { DecisionSettings } from './types';

/** Settings that the decisions start with; apart from what computes them, so that a page need not carry that. */
export const defaultDecisionSettings: DecisionSettings = { acceptedRisk: 0.1, horizonMonths: 24 };
