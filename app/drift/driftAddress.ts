import type { ChartName, DriftSettings, RunRule } from '../../lib/analysis/drift/types';
import { ruleWords } from '../words/driftSentence';

/** Charts in force if the address says nothing. */
export const allCharts: readonly ChartName[] = ['individuals', 'ewma', 'cusum'];
export const usualBudget_per_year = 2;
export const leastBudget_per_year = 0.01;
export const mostBudget_per_year = 1000;

/** Run rules that can be chosen, in their order. */
export const allRules = Object.keys(ruleWords) as readonly RunRule[];

function listed<T extends string>(text: string | null, known: readonly T[]): readonly T[] {
  const words = new Set((text ?? '').split(','));
  return known.filter((one) => words.has(one));
}

/** Settings of the Drift page from its address; what is not understood is as usual. */
export function driftSettings(query: URLSearchParams): DriftSettings {
  const budget = Number(query.get('budget') ?? usualBudget_per_year);
  const charts = listed(query.get('charts'), allCharts);
  const fits = budget >= leastBudget_per_year && budget <= mostBudget_per_year;
  return {
    budget_per_year: fits ? budget : usualBudget_per_year,
    charts: charts.length === 0 ? allCharts : charts,
    rules: listed(query.get('rules'), allRules),
  };
}

/** A list as it stands in the address; empty where it is the usual one. */
export function listText(chosen: readonly string[], usual: readonly string[]): string {
  return chosen.length === usual.length ? '' : chosen.join(',');
}
