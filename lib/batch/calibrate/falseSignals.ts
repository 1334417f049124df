import { driftResult, usualDriftSettings } from '../../analysis/drift/driftResult';
import { watchedFleet } from './watchedFleet';

/** Signals a year of fleets in which nothing drifts. */
export interface FalseSignals {
  readonly budget_per_year: number;
  /** Mean over the fleets, and its standard error. */
  readonly found_per_year: number;
  readonly standardError: number;
}

/** Mean signals a year that fleets without drift raise, for each budget, all charts in force. */
export function falseSignals(
  units: number,
  years: number,
  fleets: number,
  budgets: readonly number[],
  seed = 1,
): readonly FalseSignals[] {
  const counts = budgets.map(() => [] as number[]);
  for (let fleet = 0; fleet < fleets; fleet++) {
    const charted = watchedFleet({ units, years, drift: null }, seed * 100_000 + fleet);
    budgets.forEach((budget_per_year, index) => {
      const { findings, years: spanned } = driftResult(
        { asOf: '2026-01-01', source: 'own' },
        { charted, uncharted: [] },
        { ...usualDriftSettings, budget_per_year },
      );
      counts[index]?.push(findings.reduce((sum, { signals }) => sum + signals.length, 0) / spanned);
    });
  }
  return budgets.map((budget_per_year, index) => {
    const own = counts[index] ?? [];
    const mean = own.reduce((sum, one) => sum + one, 0) / fleets;
    const variance = own.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (fleets - 1);
    return { budget_per_year, found_per_year: mean, standardError: Math.sqrt(variance / fleets) };
  });
}
