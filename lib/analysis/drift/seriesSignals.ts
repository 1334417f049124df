import type { ChartSides } from '../../stats/charts/ChartKind';
import { cusumChart } from '../../stats/charts/cusumChart';
import { ewmaChart } from '../../stats/charts/ewmaChart';
import { outsideLimits } from '../../stats/charts/individualsChart';
import { patternStarts, runRuleSignals } from '../../stats/charts/runRules';
import type { ChartedReading, ChartedSeries, ChartName, DriftSignal, RunRule } from './types';

/** A signal before it is tied to its reading: positions among the readings with a z. */
interface RawSignal {
  readonly index: number;
  readonly since: number;
  readonly side: 'upper' | 'lower';
  readonly value: number;
  readonly limit: number;
}

/** Rule of each chart in words; the threshold stands beside it. */
const ruleWords: Readonly<Record<ChartName, string>> = {
  individuals: 'one reading beyond the threshold',
  ewma: 'weighted mean beyond its limit',
  cusum: 'sum of departures beyond the threshold',
};

/** Signals of one chart of one unit's series, in order. */
export function seriesSignals(
  series: ChartedSeries,
  chart: ChartName,
  threshold: number,
): readonly DriftSignal[] {
  const known = series.readings.filter((reading) => reading.z !== null);
  const z = known.map((reading) => reading.z as number);
  return signalsOf(chart, z, threshold, series.sides).map((signal) =>
    asSignal(series, known, chart, ruleWords[chart], signal),
  );
}

/** Signals of one run rule: one for each pattern, at the reading that completes it. */
export function runRuleFindings(series: ChartedSeries, rule: RunRule): readonly DriftSignal[] {
  const known = series.readings.filter((reading) => reading.z !== null);
  const z = known.map((reading) => reading.z as number);
  return patternStarts(runRuleSignals(z, rule)).map((index) =>
    asSignal(series, known, 'run rule', rule, {
      index,
      since: index,
      side: (z[index] ?? 0) < 0 ? 'lower' : 'upper',
      value: z[index] ?? 0,
      limit: 0,
    }),
  );
}

/** Whether a chart of a history of z has any signal. */
export function hasSignal(
  chart: ChartName,
  z: readonly number[],
  threshold: number,
  sides: ChartSides,
): boolean {
  return signalsOf(chart, z, threshold, sides).length > 0;
}

function signalsOf(
  chart: ChartName,
  z: readonly number[],
  threshold: number,
  sides: ChartSides,
): readonly RawSignal[] {
  if (chart === 'individuals')
    return outsideLimits(z, threshold, sides === 'both' ? -threshold : null).map((one) => ({
      ...one,
      since: one.index,
    }));
  if (chart === 'ewma')
    return ewmaChart(z, threshold, sides).signals.map((one) => ({ ...one, since: one.index }));
  return cusumChart(z, threshold, sides).signals.map((one) => ({ ...one, since: one.shiftStart }));
}

function asSignal(
  { unit, group, series }: ChartedSeries,
  known: readonly ChartedReading[],
  chart: DriftSignal['chart'],
  rule: string,
  signal: RawSignal,
): DriftSignal {
  const reading = known[signal.index] as ChartedReading;
  const { overhaul, date, stage } = reading;
  return {
    id: ['signal', unit, series, chart, rule, overhaul, stage].join(' | '),
    unit,
    group,
    series,
    chart,
    rule,
    overhaul,
    date,
    stage,
    side: signal.side,
    statistic: signal.value,
    threshold: signal.limit,
    sinceDate: known[signal.since]?.date ?? date,
  };
}
