import { expectedSignals } from '../../stats/charts/expectedSignals';
import type { ChartThreshold } from '../../stats/charts/thresholdForBudget';
import type { ChanceRate } from './chanceRate';
import { patternOf } from './pattern';
import { runRuleFindings, seriesSignals } from './seriesSignals';
import type { ChartedReading, ChartedSeries, DriftFinding, DriftSettings, DriftSignal } from './types';

/** What judges every series alike. */
export interface Judgement {
  readonly thresholds: readonly ThresholdWithRate[];
  readonly rules: DriftSettings['rules'];
  /** False signals a year of each run rule. */
  readonly ruleCosts: ReadonlyMap<string, number>;
  readonly beforeOverhauls: ((series: ChartedSeries) => readonly ChartedReading[]) | null;
}

/** A threshold in force, with how often chance brings what lies beyond it. */
export interface ThresholdWithRate extends ChartThreshold {
  readonly rate: ChanceRate;
  /** False signals expected in the first 1, 2, ... readings of a history. */
  readonly expected: Float64Array;
}

/** A threshold with the false signals expected of it up to the longest history. */
export function withRate(threshold: ChartThreshold, longest: number, rate: ChanceRate): ThresholdWithRate {
  return { ...threshold, rate, expected: expectedSignals(threshold.chart, threshold.threshold, longest) };
}

/** Readings with a z. */
export function lengthOf(series: ChartedSeries): number {
  return series.readings.filter((reading) => reading.z !== null).length;
}

/** What the signals of one unit's series say together; null if there are none. */
export function findingOf(series: ChartedSeries, judgement: Judgement): DriftFinding | null {
  const own = judgement.thresholds.filter(({ chart }) => chart.sides === series.sides);
  const rated = [
    ...own.flatMap(({ chart, threshold, rate }) =>
      seriesSignals(series, chart.kind, threshold).map((signal) => ({
        signal,
        byChance_per_year: rate(threshold * Math.abs(signal.statistic / signal.threshold)),
      })),
    ),
    ...judgement.rules.flatMap((rule) =>
      runRuleFindings(series, rule).map((signal) => ({
        signal,
        byChance_per_year: judgement.ruleCosts.get(rule) ?? 0,
      })),
    ),
  ];
  const [first] = rated;
  if (first === undefined) return null;
  const rarest = rated.reduce((least, one) =>
    one.byChance_per_year < least.byChance_per_year ? one : least,
  );
  const { side } = rarest.signal;
  const signals = rated.map(({ signal }) => signal).sort(byDate);
  const ofSide = signals.filter((signal) => signal.side === side);
  const [sinceDate] = ofSide.map((signal) => signal.sinceDate).sort() as [string];
  const untilDate = ofSide.at(-1)?.date ?? rarest.signal.date;
  const readings = judgement.beforeOverhauls?.(series) ?? null;
  const length = lengthOf(series);
  return {
    unit: series.unit,
    group: series.group,
    series: series.series,
    signals,
    strongest: rarest.signal,
    byChance_per_year: rarest.byChance_per_year,
    side,
    sinceDate,
    lastDate: signals.at(-1)?.date ?? rarest.signal.date,
    expectedFalse: own.reduce((sum, { expected }) => sum + (expected[length - 1] ?? 0), 0),
    pattern: readings === null ? 'cannot be told' : patternOf({ readings }, side, sinceDate, untilDate),
  };
}

function byDate(a: DriftSignal, b: DriftSignal): number {
  return a.date < b.date ? -1 : a.date > b.date ? 1 : 0;
}
