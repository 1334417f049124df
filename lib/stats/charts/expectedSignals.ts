import type { ChartKind } from './ChartKind';
import { chartChain } from './chartChain';

/** Number of charts that a chart's sides count as: the two sides of a cusum are charts of their own. */
export function chartsIn({ kind, sides }: ChartKind): number {
  return kind === 'cusum' && sides === 'both' ? 2 : 1;
}

/**
 * Expected number of false signals in the first 1, 2, ... n readings of a unit's history, from the start of the
 * chart, which starts again from 0 after every signal.
 *
 * With f(t) the probability that a chart just started signals first at its t-th reading, the probability of a
 * signal at reading t is m(t) = f(t) + sum over s < t of m(s) f(t - s); the expected number is the sum of m. It is
 * exact for independent standard normal z, and expected numbers of several charts add, whatever their correlation.
 */
export function expectedSignals(chart: ChartKind, threshold: number, readings: number): Float64Array {
  const first = new Float64Array(readings);
  const chain = chartChain(chart, threshold);
  let silent = 1;
  for (let t = 0; t < readings; t++) {
    const now = chain.next();
    first[t] = Math.max(0, silent - now);
    silent = now;
  }
  const signal = new Float64Array(readings);
  const expected = new Float64Array(readings);
  let sum = 0;
  for (let t = 0; t < readings; t++) {
    let probability = first[t] as number;
    for (let s = 0; s < t; s++) probability += (signal[s] as number) * (first[t - 1 - s] as number);
    signal[t] = probability;
    sum += probability;
    expected[t] = chartsIn(chart) * sum;
  }
  return expected;
}
