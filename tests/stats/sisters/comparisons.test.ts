import { readFileSync } from 'node:fs';
import { expect, it, test } from 'vitest';
import { analysisOfMeans } from '../../../lib/stats/sisters/analysisOfMeans';
import { anomCritical } from '../../../lib/stats/sisters/anomCritical';
import { falseDiscovery } from '../../../lib/stats/sisters/falseDiscovery';

const { rows } = JSON.parse(readFileSync('tests/reference/sisters/anomH.json', 'utf8')) as {
  rows: readonly { alpha: number; k: number; nu: number | 'inf'; h_anom: number }[];
};

test('critical values of the analysis of means agree with numerical integration to 1e-4', () => {
  // Every third row: all sizes and confidences, in a tenth of the time.
  const some = rows.filter(({ nu }, index) => nu === 'inf' || index % 3 === 0);
  for (const { alpha, k, nu, h_anom } of some) {
    const ours = anomCritical(new Array(k).fill(5), nu === 'inf' ? Number.POSITIVE_INFINITY : nu, 1 - alpha);
    expect(Math.abs(ours - h_anom), `${k} levels, ${nu}, ${alpha}`).toBeLessThan(1e-4);
  }
  expect(some.length).toBeGreaterThan(20);
});

/** Chance that all of three levels lie within h of their SDs, by summing over a fine grid of two of their departures. */
function chanceOfThree(sizes: readonly [number, number, number], h: number): number {
  const total = sizes[0] + sizes[1] + sizes[2];
  const [a, b, c] = sizes.map((size) => size / total) as [number, number, number];
  const cut = (share: number) => h * Math.sqrt((1 - share) / share);
  const steps = 800;
  let sum = 0;
  for (let i = 0; i < steps; i++)
    for (let j = 0; j < steps; j++) {
      // Departures of means from the grand mean x root of all readings: shares times departures sum to 0.
      const x = cut(a) * ((2 * i + 1) / steps - 1);
      const y = cut(b) * ((2 * j + 1) / steps - 1);
      const z = -(a * x + b * y) / c;
      if (Math.abs(z) <= cut(c)) sum += Math.exp(-0.5 * (a * x * x + b * y * y + c * z * z));
    }
  return (sum * Math.sqrt((a * b) / c) * 4 * cut(a) * cut(b)) / (2 * Math.PI * steps * steps);
}

test.each([
  [[3, 10, 40], 0.95],
  [[1, 1, 60], 0.9],
  [[25, 4, 11], 0.99],
] as [[number, number, number], number][])(
  'levels of unlike sizes %j: the critical value has its chance by a grid over all departures',
  (sizes, confidence) => {
    const h = anomCritical(sizes, Number.POSITIVE_INFINITY, confidence);
    expect(Math.abs(chanceOfThree(sizes, h) - confidence)).toBeLessThan(1e-3);
  },
);

test('q-values are those of the worked example of Benjamini and Hochberg 1995, as R gives them, in any order', () => {
  const { p, BH } = JSON.parse(readFileSync('tests/reference/small/falseDiscovery.json', 'utf8')) as {
    p: readonly number[];
    BH: readonly number[];
  };
  falseDiscovery(p).forEach((q, index) => {
    expect(q).toBeCloseTo(BH[index] as number, 12);
  });
  expect(falseDiscovery([...p].reverse())).toEqual([...falseDiscovery(p)].reverse());
});

it('names the level that lies outside, and no other', () => {
  const even = Array.from({ length: 40 }, (_, index) => ((index % 2) * 2 - 1) * 0.8);
  const means = analysisOfMeans(
    ['North', 'South', 'East', 'West'].map((name) => ({
      name,
      values: even.map((value) => value + (name === 'East' ? 0.9 : 0)),
    })),
    0.95,
    1,
  );
  expect(means.reason === null && means.levels.filter(({ outside }) => outside !== 'none')).toMatchObject([
    { name: 'East', outside: 'upper' },
  ]);
});

it('says why there is nothing to compare', () => {
  expect(analysisOfMeans([{ name: 'North', values: [1, 2] }]).reason).toBe(
    'a comparison needs at least 2 levels with values, got 1',
  );
});
