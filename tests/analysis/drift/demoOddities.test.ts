import { afterAll, beforeAll, expect, it } from 'vitest';
import { type ChartedFleet, chartedSeries } from '../../../lib/analysis/drift/chartedSeries';
import { driftResult, usualDriftSettings } from '../../../lib/analysis/drift/driftResult';
import type { DriftResult } from '../../../lib/analysis/drift/types';
import { type Analysis, openAnalysis } from '../../../lib/analysis/openAnalysis';
import { factorDifferences } from '../../../lib/analysis/sisters/factorDifferences';
import { sisterGroups } from '../../../lib/analysis/sisters/sisterGroups';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { filesOf } from '../../support/withRecords';

let database: Database;
let analysis: Analysis;
let charted: ChartedFleet;
let drift: DriftResult;

beforeAll(async () => {
  database = await openNodeDatabase();
  const settings = { asOf: null, groupBy: 'frame' } as const;
  analysis = await openAnalysis(
    await database.connect(),
    filesOf('data/demo'),
    'demo',
    settings,
    async () => {},
  );
  charted = await chartedSeries(analysis, async () => {});
  drift = driftResult(analysis.fleet, charted, usualDriftSettings);
}, 120_000);
afterAll(() => database.close());

const findingOf = (unit: string, series: string) =>
  drift.findings.find((finding) => finding.unit === unit && finding.series === series);

it('forecast residuals of the whole fleet have mean 0 and standard deviation 1, the odd ones included', () => {
  const z = charted.charted.flatMap(({ readings }) => readings.flatMap((one) => one.z ?? []));
  const mean = z.reduce((sum, one) => sum + one, 0) / z.length;
  const sd = Math.sqrt(z.reduce((sum, one) => sum + (one - mean) ** 2, 0) / z.length);
  expect(z.length).toBeGreaterThan(5_000);
  expect(Math.abs(mean)).toBeLessThan(0.05);
  expect(sd).toBeGreaterThan(0.93);
  expect(sd).toBeLessThan(1.07);
});

it('the thresholds in force cost the budget', () => {
  const costs = drift.thresholds.reduce((sum, { expected_per_year }) => sum + expected_per_year, 0);
  expect(costs).toBeCloseTo(usualDriftSettings.budget_per_year, 2);
});

it('names the unit whose runout drifts, upwards and since the years in which it does', () => {
  const finding = findingOf('H-2005', 'runout');
  expect(finding?.side).toBe('upper');
  expect(finding?.sinceDate.slice(0, 4)).toMatch(/^202[0-3]$/);
});

it('names the unit whose runout rose once and was gone after reassembly', () => {
  expect(findingOf('O-3011', 'runout')).toMatchObject({ side: 'upper' });
});

it('names the fast units by a rate ratio above 1, far beyond chance, and no unit of their series above them', () => {
  const groups = sisterGroups(analysis.fits.values());
  const rows = groups.flatMap((one) => one.rows);
  for (const [unit, series] of [
    ['O-3005', 'thrust_play'],
    ['O-3012', 'tip_turbine_mean'],
  ] as const) {
    const ofSeries = rows.filter((row) => row.series === series && row.rate.ratio !== null);
    const [fastest] = [...ofSeries].sort(
      (a, b) => (b.rate.ratio?.lower95 ?? 0) - (a.rate.ratio?.lower95 ?? 0),
    );
    expect(fastest?.unit).toBe(unit);
    expect(fastest?.rate.ratio?.lower95).toBeGreaterThan(1);
    expect(fastest?.q).toBeLessThan(0.001);
  }
});

it('names the workshop whose readings as left sit high, and no other as high', () => {
  const groups = sisterGroups(analysis.fits.values());
  const high = factorDifferences(analysis.units, groups, charted.charted)
    .filter(({ factor }) => factor === 'workshop')
    .flatMap(({ levels }) => levels.filter(({ outside }) => outside === 'upper').map(({ level }) => level));
  expect([...new Set(high)]).toEqual(['Fulmar Rotor Shop']);
});
