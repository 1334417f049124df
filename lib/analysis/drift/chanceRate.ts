import type { ChartKind } from '../../stats/charts/ChartKind';
import { expectedSignals } from '../../stats/charts/expectedSignals';

/** Levels between which the rate is interpolated: a quarter of an SD, where its logarithm is nearly straight. */
const step = 0.25;
/** Beyond these levels the chance is too small to matter, or to be told from rounding. */
const highest = { individuals: 7, ewma: 8, cusum: 40 } as const;
const least_per_year = 1e-9;

/** False signals a year that a chart raises with its threshold at a level. */
export type ChanceRate = (level: number) => number;

/**
 * How often chance alone brings a signal as strong, a year, over all the histories that a chart is drawn for.
 *
 * Exact at every quarter SD, see expectedSignals; between them its logarithm is interpolated (to 1 %), so that any number of
 * signals costs no more than a few levels. At the highest level and beyond it is that of the highest level.
 *
 * @param histories number of readings of every unit and series
 */
export function chanceRate(chart: ChartKind, histories: readonly number[], years: number): ChanceRate {
  const longest = histories.reduce((most, readings) => Math.max(most, readings), 0);
  const logRates = new Map<number, number>();
  const logRate = (node: number) => {
    const known = logRates.get(node);
    if (known !== undefined) return known;
    const expected = expectedSignals(chart, node * step, longest);
    const sum = histories.reduce((total, readings) => total + (expected[readings - 1] ?? 0), 0);
    const made = Math.log(Math.max(sum / years, least_per_year));
    logRates.set(node, made);
    return made;
  };
  return (level) => {
    const place = Math.min(Math.max(level, step), highest[chart.kind]) / step;
    const below = Math.floor(place);
    const share = place - below;
    const low = logRate(below);
    return Math.exp(share === 0 ? low : low + share * (logRate(below + 1) - low));
  };
}
