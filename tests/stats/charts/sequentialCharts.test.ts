import { expect, it, test } from 'vitest';
import { cusumChart } from '../../../lib/stats/charts/cusumChart';
import { ewmaChart } from '../../../lib/stats/charts/ewmaChart';
import { RUN_RULES, runRuleSignals } from '../../../lib/stats/charts/runRules';
import { chartReference } from './reference';

interface Charts {
  readonly NIST_6324_EWMA: {
    readonly x: number[];
    readonly lam: number;
    readonly target: number;
    readonly s: number;
    readonly ewma: number[];
    readonly time_varying_UCL: number[];
  };
  readonly NIST_6323_CUSUM: {
    readonly x: number[];
    readonly target: number;
    readonly k: number;
    readonly h: number;
    readonly rows: readonly (readonly number[])[];
    readonly first_alarm_hi_1based: number;
  };
}
const { NIST_6324_EWMA: ewma, NIST_6323_CUSUM: cusum } = chartReference<Charts>('charts');

it('EWMA with exact limits: the worked example of the NIST handbook 6.3.2.4', () => {
  const z = ewma.x.map((x) => (x - ewma.target) / ewma.s);
  const { points, signals } = ewmaChart(z, 3, 'both', ewma.lam);
  points.forEach((point, index) => {
    expect(ewma.target + ewma.s * point.ewma).toBeCloseTo(ewma.ewma[index] as number, 10);
    expect(ewma.target + ewma.s * point.limit).toBeCloseTo(ewma.time_varying_UCL[index] as number, 8);
  });
  expect(signals).toEqual([]);
});

it('CUSUM: the worked example of the NIST handbook 6.3.2.3, up to its first alarm', () => {
  const z = cusum.x.map((x) => x - cusum.target);
  const chart = cusumChart(z, cusum.h, 'both', cusum.k);
  const first = cusum.first_alarm_hi_1based - 1;
  cusum.rows.slice(0, first + 1).forEach((row, index) => {
    expect(chart.upper[index]).toBeCloseTo(row[2] as number, 10);
    expect(chart.lower?.[index]).toBeCloseTo(row[3] as number, 10);
  });
  expect(chart.signals[0]).toMatchObject({ index: first, side: 'upper', shiftStart: 12 });
});

it('a chart starts again after a signal: the next sum is that of the next reading alone', () => {
  const chart = cusumChart([5, 0.7, 0.7], 4, 'upper');
  expect(chart.upper.map((sum) => Math.round(sum * 100) / 100)).toEqual([4.5, 0.2, 0.4]);
});

const { test_vectors: vectors } = chartReference<{
  test_vectors: Record<string, { z: number[]; signals: Record<string, number[]> }>;
}>('rules');

test.each(Object.entries(vectors))('run rules on %s', (_, { z, signals }) => {
  RUN_RULES.forEach((rule, index) => {
    const expected = signals[String(index + 1)] ?? [];
    expect(
      runRuleSignals(z, rule).map((at) => at + 1),
      rule,
    ).toEqual(expected);
  });
});
