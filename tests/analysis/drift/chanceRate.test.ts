import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { expect, test } from 'vitest';
import { chanceRate } from '../../../lib/analysis/drift/chanceRate';
import type { ChartKind } from '../../../lib/stats/charts/ChartKind';
import { expectedSignals } from '../../../lib/stats/charts/expectedSignals';

const histories = [12, 15, 15, 3, 9];
const readings = histories.reduce((sum, one) => sum + one, 0);
const years = 12;

test.each([1.3, 2.25, 3.1, 4.4, 6.03])(
  'single readings beyond %d SD come as often as the normal tail says',
  (level) => {
    const exact = (readings * 2 * normalCdf(-level, 0, 1)) / years;
    const rate = chanceRate({ kind: 'individuals', sides: 'both' }, histories, years)(level);
    expect(rate / exact).toBeGreaterThan(0.99);
    expect(rate / exact).toBeLessThan(1.02);
  },
);

test.each<[ChartKind, number]>([
  [{ kind: 'ewma', sides: 'upper', lambda: 0.2 }, 2.9],
  [{ kind: 'ewma', sides: 'both', lambda: 0.2 }, 4.61],
  [{ kind: 'cusum', sides: 'both', k: 0.5 }, 5.13],
])('%j at %d: what the chart with that threshold costs', (chart, level) => {
  const exact =
    histories.reduce((sum, length) => sum + (expectedSignals(chart, level, length).at(-1) ?? 0), 0) / years;
  expect(chanceRate(chart, histories, years)(level) / exact).toBeGreaterThan(0.985);
  expect(chanceRate(chart, histories, years)(level) / exact).toBeLessThan(1.015);
});

test('never rises with the level, and stays above zero beyond the last one', () => {
  const rate = chanceRate({ kind: 'cusum', sides: 'upper', k: 0.5 }, histories, years);
  const rates = [0, 0.1, 1, 5, 9.9, 10, 30, 40, 41, 1e6].map(rate);
  for (const [index, one] of rates.entries()) {
    expect(one).toBeGreaterThan(0);
    expect(one).toBeLessThanOrEqual(rates[index - 1] ?? Number.POSITIVE_INFINITY);
  }
});
