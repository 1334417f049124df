import { max, min } from 'd3-array';
import { chartLines, usualDriftSettings, yearsCharted } from '../../analysis/drift/driftResult';
import {
  type ChartThreshold,
  thresholdForBudget,
  thresholdsForBudget,
} from '../../stats/charts/thresholdForBudget';
import type { FinishedPart } from './PartTask';

const { charts, budget_per_year } = usualDriftSettings;

/** Thresholds that keep the yearly budget of false signals over the histories of all parts, as one fleet's are made. */
export function fleetThresholds(parts: readonly FinishedPart[], asOf: string): readonly ChartThreshold[] {
  const lines = chartLines(
    {
      upper: parts.flatMap(({ histories }) => histories.upper),
      both: parts.flatMap(({ histories }) => histories.both),
    },
    charts,
  );
  if (lines.length === 0) return [];
  const first = min(parts, ({ firstCharted }) => firstCharted) ?? asOf;
  const last = max(parts, ({ lastCharted }) => lastCharted) ?? asOf;
  return thresholdsForBudget(lines, yearsCharted(first, last), budget_per_year);
}

/**
 * Thresholds that those of the fleet are hardly ever below, before its readings are known: one series of every unit with two
 * readings an overhaul is to keep a budget that all series will share.
 *
 * @param overhauls number of overhauls of every unit
 */
export function guessedThresholds(overhauls: readonly number[], years: number): readonly ChartThreshold[] {
  const histories = overhauls.map((count) => 2 * count);
  return chartLines({ upper: histories, both: histories }, charts).map((line) =>
    thresholdForBudget(line, years, budget_per_year / charts.length),
  );
}

/** Whether a series without a signal at the one thresholds has none at the others: all of them are at least as high. */
export function areBelow(one: readonly ChartThreshold[], other: readonly ChartThreshold[]): boolean {
  return other.every(({ chart, threshold }) =>
    one.some(
      (least) =>
        least.chart.kind === chart.kind && least.chart.sides === chart.sides && least.threshold <= threshold,
    ),
  );
}
