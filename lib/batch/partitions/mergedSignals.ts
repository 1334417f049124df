import { signalsTable } from '../../analysis/comparisonTables';
import { seriesSignals } from '../../analysis/drift/seriesSignals';
import type { ChartedSeries, DriftSignal } from '../../analysis/drift/types';
import type { ResultTable } from '../../analysis/fleetTables';
import type { ChartThreshold } from '../../stats/charts/thresholdForBudget';

/** Every signal of the whole fleet at its thresholds, from the series that any of its parts has a signal of. */
export function mergedSignals(
  candidates: readonly ChartedSeries[],
  thresholds: readonly ChartThreshold[],
): ResultTable {
  const findings = candidates.map((series) => ({
    signals: thresholds
      .filter(({ chart }) => chart.sides === series.sides)
      .flatMap(({ chart, threshold }) => seriesSignals(series, chart.kind, threshold))
      .sort(byDate),
  }));
  return signalsTable({ findings });
}

function byDate(a: DriftSignal, b: DriftSignal): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}
