import { expect, test } from 'vitest';
import { driftResult, usualDriftSettings } from '../../../lib/analysis/drift/driftResult';
import type { ChartedSeries } from '../../../lib/analysis/drift/types';
import { drawsFor } from '../../../lib/batch/demo/draws';

const fleet = { asOf: '2026-01-01', source: 'own' } as const;

/** A unit's runouts, as found every year from 2010 on, with the given z. */
function series(unit: string, z: readonly number[], sides: ChartedSeries['sides'] = 'both'): ChartedSeries {
  return {
    unit,
    group: 'Lark',
    series: sides === 'upper' ? 'runout' : 'thrust_play',
    sides,
    readings: z.map((one, k) => ({
      overhaul: `${unit} ${k}`,
      date: `${2010 + k}-06-01`,
      stage: 'found',
      unitHours: 8000 * (k + 1),
      runHours: 8000,
      workshop: null,
      value_mm: 0.02,
      foretold_mm: 0.02,
      z: one,
    })),
  };
}
const drawn = (name: string, count: number) => {
  const draws = drawsFor(`charted/${name}`);
  return Array.from({ length: count }, () => draws.normal(0, 1));
};
const still = (units: number) => Array.from({ length: units }, (_, k) => series(`A-${k}`, drawn(`${k}`, 15)));

test('false signals expected of single series add up to the budget of the fleet over its years', () => {
  const charted = still(40);
  const settings = { ...usualDriftSettings, budget_per_year: 12 };
  const { findings, years } = driftResult(fleet, { charted, uncharted: [] }, settings);
  expect(findings.length).toBeGreaterThan(10);
  for (const { expectedFalse } of findings)
    expect((expectedFalse * charted.length) / years).toBeCloseTo(12, 2);
});

test('the series that moves most comes first, since its shift began, on the side of its strongest signal', () => {
  const shifted = series('B-1', [0, -3.6, 0, 0, 0, 0, 0, 0, -0.5, 2, 2.5, 3, 2.5, 3, 4.5]);
  const { findings } = driftResult(
    fleet,
    { charted: [...still(40), shifted], uncharted: [] },
    usualDriftSettings,
  );
  expect(findings[0]).toMatchObject({
    unit: 'B-1',
    side: 'upper',
    sinceDate: '2019-06-01',
    lastDate: '2024-06-01',
  });
  expect(findings[0]?.signals.some(({ side }) => side === 'lower')).toBe(true);
  expect(findings[0]?.byChance_per_year).toBeLessThan(0.001);
  expect(findings.map(({ byChance_per_year }) => byChance_per_year)).toEqual(
    findings.map(({ byChance_per_year }) => byChance_per_year).sort((a, b) => a - b),
  );
});

test('a charts in force takes the whole budget, and a rule in force raises signals beside it', () => {
  const charted = [...still(30), series('C-1', [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1])];
  const result = driftResult(
    fleet,
    { charted, uncharted: [] },
    { budget_per_year: 1, charts: ['cusum'], rules: ['nineOnOneSide'] },
  );
  expect(result.thresholds).toHaveLength(1);
  expect(result.thresholds[0]?.expected_per_year).toBeCloseTo(1, 3);
  const rise = result.findings.find(({ unit }) => unit === 'C-1');
  expect(rise?.signals.map(({ chart, rule, date }) => [chart, rule, date])).toEqual([
    ['run rule', 'nineOnOneSide', '2018-06-01'],
  ]);
  const cost = result.ruleCosts.find(({ rule }) => rule === 'nineOnOneSide')?.expected_per_year;
  expect(rise?.byChance_per_year).toBe(cost);
});

test('nothing charted gives no threshold and no finding', () => {
  const uncharted = [{ group: 'Lark', series: 'runout', reason: 'too few' }];
  expect(driftResult(fleet, { charted: [], uncharted }, usualDriftSettings)).toMatchObject({
    years: 1,
    readings: 0,
    thresholds: [],
    ruleCosts: [],
    findings: [],
    uncharted,
  });
});
