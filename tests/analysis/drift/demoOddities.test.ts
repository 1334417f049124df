import { readFileSync } from 'node:fs';
import { csvParse } from 'd3-dsv';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { signalsTable } from '../../../lib/analysis/comparisonTables';
import { type ChartedFleet, chartedSeries } from '../../../lib/analysis/drift/chartedSeries';
import { driftResult, usualDriftSettings } from '../../../lib/analysis/drift/driftResult';
import type { DriftResult, DriftSignal } from '../../../lib/analysis/drift/types';
import { type Analysis, openAnalysis } from '../../../lib/analysis/openAnalysis';
import { factorDifferences } from '../../../lib/analysis/sisters/factorDifferences';
import { sisterGroups } from '../../../lib/analysis/sisters/sisterGroups';
import {
  driftingRunout,
  fastThrustBearing,
  highWorkshop,
  openingTurbineTip,
  vanishingRunout,
} from '../../../lib/batch/demo/oddities';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';
import { filesOf } from '../../support/withRecords';

const overhauls = csvParse(readFileSync('data/demo/overhauls.csv', 'utf8'));
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

/** Whether a signal comes from what was made odd on purpose: a unit's own series, or thrust bearings closed by the high workshop. */
function isPlanted({ unit, series, overhaul, stage }: DriftSignal): boolean {
  if (unit === driftingRunout.unit || unit === vanishingRunout.unit) return series === 'runout';
  if (unit === openingTurbineTip.unit && series !== 'tip_turbine_offset')
    return series.startsWith('tip_turbine');
  if (series !== 'thrust_play') return false;
  return unit === fastThrustBearing.unit || closedBy(unit, overhaul, stage) === highWorkshop.workshop;
}

/** Workshop that fitted the thrust bearing of a reading. */
function closedBy(unit: string, overhaul: string, stage: 'found' | 'left'): string | undefined {
  const own = overhauls
    .filter((row) => row.unit === unit)
    .sort((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1));
  const at = own.findIndex((row) => row.overhaul === overhaul) + (stage === 'left' ? 1 : 0);
  return own.slice(0, at).findLast(({ fitted }) => fitted?.includes('TB-'))?.workshop;
}

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

it('a signal at its threshold comes by chance as often as the threshold costs, a stronger one less often', () => {
  for (const { strongest, byChance_per_year } of drift.findings) {
    const sides = strongest.series === 'runout' || strongest.series.endsWith('_offset') ? 'upper' : 'both';
    const own = drift.thresholds.find((one) => one.chart === strongest.chart && one.sides === sides);
    expect(byChance_per_year).toBeLessThan((own?.expected_per_year ?? 0) * 1.01);
    expect(byChance_per_year).toBeGreaterThan(0);
  }
});

it('writes the signals of the page, each once', () => {
  const { header, rows } = signalsTable(drift);
  expect(header).toEqual(['unit', 'series', 'chart', 'rule', 'overhaul', 'date', 'statistic', 'threshold']);
  const ofPage = drift.findings.flatMap(({ signals }) =>
    signals.map((one) =>
      [one.unit, one.series, one.chart, one.overhaul, one.statistic.toPrecision(4)].join(),
    ),
  );
  const ofFile = rows.map(([unit, series, chart, , overhaul, , statistic]) =>
    [unit, series, chart, overhaul, Number(statistic).toPrecision(4)].join(),
  );
  expect(ofFile.toSorted()).toEqual(ofPage.toSorted());
});

it('the thresholds in force cost the budget', () => {
  const costs = drift.thresholds.reduce((sum, { expected_per_year }) => sum + expected_per_year, 0);
  expect(costs).toBeCloseTo(usualDriftSettings.budget_per_year, 2);
});

it('names the unit whose runout drifts, upwards and since the years in which it does', () => {
  const finding = findingOf('H-2005', 'runout');
  expect(finding?.side).toBe('upper');
  expect(finding?.sinceDate.slice(0, 4)).toMatch(/^202[0-3]$/);
  expect(finding?.pattern).toBe('persists');
});

it('names the unit whose runout rose once and was gone after reassembly', () => {
  expect(findingOf('O-3011', 'runout')).toMatchObject({
    side: 'upper',
    sinceDate: '2023-08-12',
    lastDate: '2023-08-12',
    pattern: 'vanishes',
  });
});

it('puts first the three units whose series were made to move, in front of all that is chance', () => {
  const units = new Set(drift.findings.map(({ unit }) => unit));
  expect([...units].slice(0, 3).sort()).toEqual(
    [driftingRunout.unit, vanishingRunout.unit, openingTurbineTip.unit].sort(),
  );
});

it('raises no more signals that were not planted than chance allows', () => {
  const rest = drift.findings.flatMap(({ signals }) => signals).filter((signal) => !isPlanted(signal));
  const expected = usualDriftSettings.budget_per_year * drift.years;
  expect(expected).toBeCloseTo(25.9, 1);
  // 37 are left. A Poisson of mean 25.9 stays within 39 in 99.4 % and reaches 37 in 2 %, but signals come in groups, so that
  // their number varies more: twins of this fleet without its oddities, from 22 other seeds, raised 27.8 on average, 14 to 45.
  expect(rest.length).toBeLessThanOrEqual(39);
  expect(rest.length).toBeGreaterThan(9);
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
