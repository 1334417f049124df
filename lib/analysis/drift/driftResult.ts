import { differenceInDays } from 'date-fns';
import { type ChartKind, type ChartSides, CUSUM_K, EWMA_LAMBDA } from '../../stats/charts/ChartKind';
import { runRuleCosts } from '../../stats/charts/runRuleCosts';
import { type ChartLine, thresholdsForBudget } from '../../stats/charts/thresholdForBudget';
import type { FleetResult } from '../types';
import { chanceRate } from './chanceRate';
import type { ChartedFleet } from './chartedSeries';
import { findingOf, lengthOf, type ThresholdWithRate, withRate } from './finding';
import type { ChartedSeries, ChartName, DriftResult, DriftSettings } from './types';

/** Two signals a year for the whole fleet, all charts in force, no run rules. */
export const usualDriftSettings: DriftSettings = {
  budget_per_year: 2,
  charts: ['individuals', 'ewma', 'cusum'],
  rules: [],
};

function chartKind(chart: ChartName, sides: ChartSides): ChartKind {
  if (chart === 'individuals') return { kind: chart, sides };
  return chart === 'ewma' ? { kind: chart, sides, lambda: EWMA_LAMBDA } : { kind: chart, sides, k: CUSUM_K };
}

/** Signals of the whole fleet within its yearly budget of false ones, what they say together, and what each rule costs. */
export function driftResult(
  { asOf, source }: Pick<FleetResult, 'asOf' | 'source'>,
  { charted, uncharted, beforeOverhauls }: ChartedFleet,
  settings: DriftSettings,
): DriftResult {
  const years = yearsOf(charted, asOf);
  const histories = charted.map(lengthOf).filter((length) => length > 0);
  const thresholds = histories.length === 0 ? [] : thresholdsInForce(charted, years, settings);
  const ruleCosts = histories.length === 0 ? [] : runRuleCosts(histories, years);
  const judgement = {
    thresholds,
    rules: settings.rules,
    ruleCosts: new Map(ruleCosts.map(({ rule, expected_per_year }) => [rule, expected_per_year])),
    beforeOverhauls: beforeOverhauls ?? null,
  };
  const findings = charted.flatMap((series) => findingOf(series, judgement) ?? []);
  return {
    asOf,
    source,
    settings,
    years,
    readings: histories.reduce((sum, length) => sum + length, 0),
    thresholds: thresholds.map(({ chart, threshold, expected_per_year, met }) => ({
      chart: chart.kind,
      sides: chart.sides,
      threshold,
      expected_per_year,
      met,
    })),
    ruleCosts,
    findings: findings.sort((a, b) => a.byChance_per_year - b.byChance_per_year),
    uncharted,
  };
}

function yearsOf(charted: readonly ChartedSeries[], asOf: string): number {
  const { first, last } = daysCharted(charted, asOf);
  return yearsCharted(first, last === '' ? asOf : last);
}

/** First and last day of a charted reading, the first not after the day; the last is '' if there is none. */
export function daysCharted(
  charted: readonly ChartedSeries[],
  asOf: string,
): { readonly first: string; readonly last: string } {
  let [first, last] = [asOf, ''];
  for (const { readings } of charted) {
    for (const { date } of readings) {
      if (date < first) first = date;
      if (date > last) last = date;
    }
  }
  return { first, last };
}

/** Years from the first charted reading to the last, at least one. */
export function yearsCharted(first: string, last: string): number {
  return Math.max(1, differenceInDays(last, first) / 365.25);
}

/** Number of readings with a z of every unit and series, by the sides of its charts. */
export function historiesBySides(charted: readonly ChartedSeries[]): Readonly<Record<ChartSides, number[]>> {
  const histories: Record<ChartSides, number[]> = { upper: [], both: [] };
  for (const series of charted) {
    const length = lengthOf(series);
    if (length > 0) histories[series.sides].push(length);
  }
  return histories;
}

/** The charts in force, each with the histories that it is drawn for. */
export function chartLines(
  histories: Readonly<Record<ChartSides, readonly number[]>>,
  charts: readonly ChartName[],
): readonly ChartLine[] {
  const drawn = (['upper', 'both'] as const).filter((sides) => histories[sides].length > 0);
  return charts.flatMap((chart) =>
    drawn.map((sides) => ({ chart: chartKind(chart, sides), histories: histories[sides] })),
  );
}

function thresholdsInForce(
  charted: readonly ChartedSeries[],
  years: number,
  settings: DriftSettings,
): readonly ThresholdWithRate[] {
  const lines = chartLines(historiesBySides(charted), settings.charts);
  if (lines.length === 0) return [];
  return thresholdsForBudget(lines, years, settings.budget_per_year).map((threshold, index) => {
    const { chart, histories } = lines[index] as (typeof lines)[number];
    const longest = histories.reduce((most, length) => Math.max(most, length), 0);
    return withRate(threshold, longest, chanceRate(chart, histories, years));
  });
}
