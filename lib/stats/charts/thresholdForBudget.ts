import { findRoot } from '../wear/findRoot';
import type { ChartKind } from './ChartKind';
import { expectedSignals } from './expectedSignals';

/** A chart with the histories that it is drawn for: the number of readings of every unit and series. */
export interface ChartLine {
  readonly chart: ChartKind;
  readonly histories: readonly number[];
}

/** A chart's threshold and what it costs. */
export interface ChartThreshold {
  readonly chart: ChartKind;
  readonly threshold: number;
  /** Its share of the budget, false signals a year of the whole fleet. */
  readonly budget_per_year: number;
  /** Expected false signals a year at the threshold: the budget, unless the range of thresholds ends first. */
  readonly expected_per_year: number;
  /** False where the budget would ask for a threshold outside the range, see thresholdForBudget. */
  readonly met: boolean;
}

/** Below 1 a signal would say nothing; above 8 (a cusum 40) one would hardly ever come. */
const LOWEST = 1;
const HIGHEST = { individuals: 8, ewma: 8, cusum: 40 } as const;
const PRECISION = 1e-5;

/**
 * Threshold at which a chart raises the given number of false signals a year over all its histories.
 *
 * The expected number in a history of n readings is that of a chart started with the history and again after
 * every signal, see expectedSignals: with about one reading a year a history is far shorter than the average run
 * length, and a chart from 0 signals less often at first than 1 / that length. Histories are summed and divided
 * by the years they span. Throws unless budget and years are positive and some history has a reading.
 */
export function thresholdForBudget(
  { chart, histories }: ChartLine,
  years: number,
  budget_per_year: number,
): ChartThreshold {
  const longest = histories.reduce((most, readings) => Math.max(most, readings), 0);
  if (!(years > 0) || !(budget_per_year > 0) || !(longest >= 1)) {
    throw new Error(
      `thresholdForBudget requires positive years and budget and at least one reading, got ${years}, ${budget_per_year} and ${longest}`,
    );
  }
  const histogram = new Float64Array(longest);
  for (const readings of histories)
    if (readings >= 1) histogram[readings - 1] = (histogram[readings - 1] as number) + 1;
  const perYear = (threshold: number) =>
    expectedSignals(chart, threshold, longest).reduce(
      (sum, expected, k) => sum + expected * (histogram[k] as number),
      0,
    ) / years;
  const result = (threshold: number, met: boolean) => ({
    chart,
    threshold,
    budget_per_year,
    expected_per_year: perYear(threshold),
    met,
  });
  // On the logarithm, on which the expected number is nearly straight.
  const excess = (threshold: number) =>
    Math.log(Math.max(perYear(threshold), Number.MIN_VALUE)) - Math.log(budget_per_year);
  const [low, high] = [LOWEST, HIGHEST[chart.kind]];
  const [excessLow, excessHigh] = [excess(low), excess(high)];
  if (excessLow <= 0) return result(low, excessLow === 0);
  if (excessHigh >= 0) return result(high, excessHigh === 0);
  return result(findRoot(excess, low, high, PRECISION, excessLow, excessHigh), true);
}

/**
 * Thresholds of all charts in force together, so that the whole fleet raises the given number of false signals a
 * year.
 *
 * The budget is shared equally by the kinds of chart in force (individuals, ewma, cusum), and within a kind by its
 * lines in proportion to their readings, so that a reading costs the same in every series. Expected numbers add
 * whatever the correlation of the z of several series or charts, so the shares add up to the budget. Run rules
 * have no threshold: what they cost comes on top, see runRuleCosts.
 */
export function thresholdsForBudget(
  lines: readonly ChartLine[],
  years: number,
  budget_per_year: number,
): readonly ChartThreshold[] {
  const kinds = new Set(lines.map(({ chart }) => chart.kind));
  const readings = (line: ChartLine) => line.histories.reduce((sum, count) => sum + count, 0);
  return lines.map((line) => {
    const sameKind = lines.filter(({ chart }) => chart.kind === line.chart.kind);
    const total = sameKind.reduce((sum, other) => sum + readings(other), 0);
    return thresholdForBudget(line, years, (budget_per_year / kinds.size) * (readings(line) / total));
  });
}
