import { expect, it, test } from 'vitest';
import { controlConstants } from '../../../lib/stats/charts/controlConstants';
import { individualsChart } from '../../../lib/stats/charts/individualsChart';
import { chartReference } from './reference';

const constants =
  chartReference<Record<string, { d2: number; d3: number; c4: number; D4: number; E2: number }>>('constants');

test.each(Object.entries(constants).filter(([n]) => Number(n) >= 2))(
  'constants of groups of %s agree to 6 digits',
  (n, { d2, d3, c4, D4, E2 }) => {
    const ours = controlConstants(Number(n));
    expect(ours.d2 / d2 - 1).toBeCloseTo(0, 7);
    expect(ours.d3 / d3 - 1).toBeCloseTo(0, 7);
    expect(ours.c4 / c4 - 1).toBeCloseTo(0, 7);
    expect((1 + (3 * ours.d3) / ours.d2) / D4 - 1).toBeCloseTo(0, 7);
    expect(3 / ours.d2 / E2 - 1).toBeCloseTo(0, 7);
  },
);

it('refuses groups outside 2 to 100', () => {
  expect(() => controlConstants(1)).toThrow('from 2 to 100, got 1');
  expect(() => controlConstants(2.5)).toThrow('got 2.5');
});

interface Individuals {
  readonly x: number[];
  readonly moving_ranges: number[];
  readonly mean: number;
  readonly mrbar: number;
  readonly with_exact_d2: {
    readonly sigma: number;
    readonly UCL: number;
    readonly LCL: number;
    readonly MR_UCL: number;
  };
}

it('individuals with moving ranges: the worked example of the NIST handbook 6.3.2.2', () => {
  const { NIST_6322_individuals: example } = chartReference<{ NIST_6322_individuals: Individuals }>('charts');
  const chart = individualsChart(example.x);
  expect(chart?.centre).toBeCloseTo(example.mean, 10);
  expect(chart?.meanMovingRange).toBeCloseTo(example.mrbar, 10);
  expect(chart?.sigma).toBeCloseTo(example.with_exact_d2.sigma, 7);
  expect(chart?.upper).toBeCloseTo(example.with_exact_d2.UCL, 6);
  expect(chart?.lower).toBeCloseTo(example.with_exact_d2.LCL, 6);
  expect(chart?.movingRangeUpper).toBeCloseTo(example.with_exact_d2.MR_UCL, 6);
  expect(chart?.signals).toEqual([]);
  // As printed in the handbook, with d2 rounded to 1.128.
  expect(chart?.upper).toBeCloseTo(55.8041, 2);
  expect(chart?.lower).toBeCloseTo(45.8159, 2);
});

it('an upper chart has no lower limit, a baseline limits what limits come from, and equal values have no chart', () => {
  const values = [1, 2, 1, 2, 1, 9];
  expect(individualsChart(values, 'upper')?.lower).toBeNull();
  const chart = individualsChart(values, 'both', 5);
  expect(chart?.centre).toBeCloseTo(1.4, 12);
  expect(chart?.sigma).toBeCloseTo(1 / 1.1283791670955126, 8);
  expect(chart?.signals.map(({ index, side }) => [index, side])).toEqual([[5, 'upper']]);
  expect(individualsChart([0.3, 0.3, 0.3])).toBeNull();
  expect(individualsChart([0.3])).toBeNull();
});
