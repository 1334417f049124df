import { group } from 'd3-array';
import { differenceInDays } from 'date-fns';
import { type ChartKind, type ChartSides, CUSUM_K, EWMA_LAMBDA } from '../../stats/charts/ChartKind';
import { expectedSignals } from '../../stats/charts/expectedSignals';
import { runRuleCosts } from '../../stats/charts/runRuleCosts';
import { type ChartThreshold, thresholdsForBudget } from '../../stats/charts/thresholdForBudget';
import type { FleetResult } from '../types';
import type { ChartedFleet } from './chartedSeries';
import { patternOf } from './pattern';
import { runRuleFindings, seriesSignals } from './seriesSignals';
import type { ChartedSeries, ChartName, DriftFinding, DriftResult, DriftSettings } from './types';

/** Two signals a year for the whole fleet, all charts in force, no run rules. */
export const usualDriftSettings: DriftSettings = {
  budget_per_year: 2,
  charts: ['individuals', 'ewma', 'cusum'],
  rules: [],
};

/** Readings with a z. */
function lengthOf(series: ChartedSeries): number {
  return series.readings.filter((reading) => reading.z !== null).length;
}

function chartKind(chart: ChartName, sides: ChartSides): ChartKind {
  if (chart === 'individuals') return { kind: chart, sides };
  return chart === 'ewma' ? { kind: chart, sides, lambda: EWMA_LAMBDA } : { kind: chart, sides, k: CUSUM_K };
}

/** Signals of the whole fleet within its yearly budget of false ones, what they say together, and what each rule costs. */
export function driftResult(
  { asOf, source }: Pick<FleetResult, 'asOf' | 'source'>,
  { charted, uncharted }: ChartedFleet,
  settings: DriftSettings,
): DriftResult {
  const dates = charted.flatMap(({ readings }) => readings.map(({ date }) => date)).sort();
  const first = dates[0] ?? asOf;
  const years = Math.max(1, differenceInDays(dates.at(-1) ?? asOf, first) / 365.25);
  const histories = charted.map(lengthOf).filter((length) => length > 0);
  const thresholds = histories.length === 0 ? [] : thresholdsInForce(charted, years, settings);
  const findings = charted.flatMap((series) => findingOf(series, thresholds, settings));
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
    ruleCosts: histories.length === 0 ? [] : runRuleCosts(histories, years),
    findings: findings.sort((a, b) => strength(b) - strength(a)),
    uncharted,
  };
}

function thresholdsInForce(
  charted: readonly ChartedSeries[],
  years: number,
  settings: DriftSettings,
): readonly ChartThreshold[] {
  const bySides = group(
    charted.filter((series) => lengthOf(series) > 0),
    (series) => series.sides,
  );
  const lines = settings.charts.flatMap((chart) =>
    [...bySides].map(([sides, series]) => ({
      chart: chartKind(chart, sides),
      histories: series.map(lengthOf),
    })),
  );
  return lines.length === 0 ? [] : thresholdsForBudget(lines, years, settings.budget_per_year);
}

function findingOf(
  series: ChartedSeries,
  thresholds: readonly ChartThreshold[],
  settings: DriftSettings,
): readonly DriftFinding[] {
  const own = thresholds.filter(({ chart }) => chart.sides === series.sides);
  const signals = [
    ...own.flatMap(({ chart, threshold }) => seriesSignals(series, chart.kind, threshold)),
    ...settings.rules.flatMap((rule) => runRuleFindings(series, rule)),
  ].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const [earliest] = [...signals].sort((a, b) => (a.sinceDate < b.sinceDate ? -1 : 1));
  const last = signals.at(-1);
  if (earliest === undefined || last === undefined) return [];
  const length = lengthOf(series);
  return [
    {
      unit: series.unit,
      group: series.group,
      series: series.series,
      signals,
      side: last.side,
      sinceDate: earliest.sinceDate,
      lastDate: last.date,
      expectedFalse: own.reduce(
        (sum, { chart, threshold }) =>
          sum + expectedSignals(chart, threshold, length).reduce((all, one) => all + one, 0),
        0,
      ),
      pattern: patternOf(series, last.side, earliest.sinceDate),
    },
  ];
}

/** How far the strongest signal lies past its threshold. */
function strength(finding: DriftFinding): number {
  return Math.max(
    ...finding.signals.map(({ statistic, threshold }) =>
      threshold === 0 ? 0 : Math.abs(statistic / threshold),
    ),
  );
}
