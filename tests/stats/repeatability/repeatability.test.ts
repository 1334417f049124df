import { readFileSync } from 'node:fs';
import { expect, it, test } from 'vitest';
import { pooledRepeatability, repeatability } from '../../../lib/stats/repeatability/repeatability';

interface Example {
  readonly s_e: number;
  readonly ci: readonly [number, number];
  readonly level: number;
  readonly mean_diff: number;
  readonly p_bias: number;
}
const gauge = JSON.parse(readFileSync('tests/reference/small/gauge.json', 'utf8'));

const differences = (first: readonly number[], second: readonly number[]) =>
  second.map((value, index) => value - (first[index] as number));

test.each([
  [
    'peak flow, Wright meter',
    gauge.bland_altman_1986_wright.first,
    gauge.bland_altman_1986_wright.second,
    gauge.bland_altman_1986_wright.uncentred,
  ],
  [
    'peak flow, mini meter',
    gauge.bland_altman_1986_mini.first,
    gauge.bland_altman_1986_mini.second,
    gauge.bland_altman_1986_mini.uncentred,
  ],
  [
    'clearances',
    gauge.clearance_example.as_found,
    gauge.clearance_example.as_left,
    gauge.clearance_example.uncentred90,
  ],
] as [string, number[], number[], Example][])('%s, as R gives it', (_, first, second, expected) => {
  const result = repeatability(differences(first, second), expected.level);
  expect(result?.sd_mm).toBeCloseTo(expected.s_e, 9);
  expect(result?.lower_mm).toBeCloseTo(expected.ci[0], 8);
  expect(result?.upper_mm).toBeCloseTo(expected.ci[1], 8);
  expect(Math.abs(result?.meanDifference_mm ?? 0)).toBeCloseTo(Math.abs(expected.mean_diff), 9);
  expect(result?.meanDifferenceP).toBeCloseTo(expected.p_bias, 9);
  expect(result?.shifted).toBe(false);
});

it('pooled squares are those of all pairs together', () => {
  const pooled = pooledRepeatability([
    { workshop: 'A', differences_mm: [0.02, -0.01] },
    { workshop: 'B', differences_mm: [0.03] },
  ]);
  expect(pooled.pooled?.sd_mm).toBeCloseTo(Math.sqrt(((4 + 1 + 9) * 1e-4) / 6), 12);
  expect(pooled.workshops.map(({ result }) => result?.pairs)).toEqual([2, 1]);
});

it('pairs that all agree, and none, have no repeatability', () => {
  expect(repeatability([0, 0, 0])).toBeNull();
  expect(repeatability([])).toBeNull();
});
