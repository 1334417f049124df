import { afterAll, beforeAll, expect, test } from 'vitest';
import { chartedSeries } from '../../../lib/analysis/drift/chartedSeries';
import { driftResult, usualDriftSettings } from '../../../lib/analysis/drift/driftResult';
import type { DriftResult } from '../../../lib/analysis/drift/types';
import { unitCharts } from '../../../lib/analysis/drift/unitCharts';
import { openAnalysis } from '../../../lib/analysis/openAnalysis';
import { drawsFor } from '../../../lib/batch/demo/draws';
import type { Database } from '../../../lib/store/Connector';
import { openNodeDatabase } from '../../../lib/store/nodeDatabase';

let database: Database;
beforeAll(async () => {
  database = await openNodeDatabase();
});
afterAll(() => database.close());

interface Row {
  readonly unit: string;
  readonly year: number;
  readonly hours: number;
  readonly cells: readonly (number | string)[];
}

/** A sheet of invented overhauls with the given columns of readings, opened and charted with the usual settings. */
async function drift(columns: readonly string[], rows: readonly Row[], limits = '') {
  const sheet = [
    ['unit', 'date', 'unit_hours', ...columns].join(),
    ...rows.map(({ unit, year, hours, cells }) => [unit, `${year}-05-01`, hours, ...cells].join()),
  ].join('\n');
  const files = [
    { name: 'sheet.csv', content: `${sheet}\n` },
    { name: 'limits.csv', content: limits },
  ]
    .filter(({ content }) => content !== '')
    .map(({ name, content }) => ({ name, bytes: new TextEncoder().encode(content) }));
  const connector = await database.connect();
  const settings = { asOf: null, groupBy: 'frame' } as const;
  const analysis = await openAnalysis(connector, files, 'own', settings, async () => {});
  const charted = await chartedSeries(analysis, async () => {});
  const result = driftResult(analysis.fleet, charted, usualDriftSettings);
  const charts = charted.charted.map((series) => unitCharts(series, result.thresholds, 'found', null));
  await connector.close();
  expectFinite(result);
  expectFinite(charts);
  return { result, charted: charted.charted };
}

/** Every number anywhere in a result is finite. */
function expectFinite(result: unknown): void {
  JSON.stringify(result, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${key} is ${value}`);
    if (value === undefined) throw new Error(`${key} is undefined`);
    return value;
  });
}

/** Runouts as found and as left of a unit at its overhauls, one every two years. */
function runouts(unit: string, overhauls: number, drawn = drawsFor(`edge/${unit}`)): readonly Row[] {
  return Array.from({ length: overhauls }, (_, k) => ({
    unit,
    year: 2006 + 2 * k,
    hours: Math.round((k + 1) * drawn.normal(12_000, 500)),
    cells: [1, 2].map(() => Math.abs(drawn.normal(0.02, 0.004)).toFixed(4)),
  }));
}
const runoutColumns = ['runout_found_mm', 'runout_left_mm'];
const reasonOf = ({ uncharted }: DriftResult, series: string) =>
  uncharted.find((one) => one.series === series)?.reason;

test('a group of two units is charted once it has readings enough, and its thresholds keep the budget', async () => {
  const { result, charted } = await drift(runoutColumns, [...runouts('A-1', 6), ...runouts('A-2', 6)]);
  expect(charted.map(({ unit }) => unit).sort()).toEqual(['A-1', 'A-2']);
  expect(charted.every(({ readings }) => readings.some(({ z }) => z !== null))).toBe(true);
  expect(result.readings).toBeGreaterThan(0);
  expect(result.readings).toBeLessThan(24);
});

test('a group of 500 units keeps the budget and stays quick', async () => {
  const rows = Array.from({ length: 500 }, (_, k) => runouts(`B-${k}`, 3)).flat();
  const started = performance.now();
  const { result, charted } = await drift(runoutColumns, rows);
  expect(performance.now() - started).toBeLessThan(30_000);
  expect(charted).toHaveLength(500);
  const cost = result.thresholds.reduce((sum, { expected_per_year }) => sum + expected_per_year, 0);
  expect(cost).toBeCloseTo(2, 2);
});

test('a unit with a single reading among others is charted too', async () => {
  const lonely = { unit: 'C-9', year: 2012, hours: 12_000, cells: ['0.0550', ''] };
  const rows = [1, 2, 3, 4].flatMap((k) => runouts(`C-${k}`, 5));
  const { result, charted } = await drift(runoutColumns, [...rows, lonely]);
  const own = charted.find(({ unit }) => unit === 'C-9');
  expect(own?.readings).toHaveLength(1);
  expect(own?.readings[0]?.z).toBeGreaterThan(3);
  expect(result.findings[0]).toMatchObject({
    unit: 'C-9',
    side: 'upper',
    sinceDate: '2012-05-01',
    pattern: 'cannot be told',
  });
});

test('a single unit has no forecast, and the reason is said', async () => {
  const { result, charted } = await drift(runoutColumns, runouts('D-1', 5));
  expect(charted).toEqual([]);
  expect(result).toMatchObject({ readings: 0, thresholds: [], findings: [], ruleCosts: [] });
  expect(reasonOf(result, 'runout')).toMatch(/2 units/);
});

test('readings that are all equal raise nothing', async () => {
  const rows = [1, 2, 3].flatMap((k) =>
    runouts(`E-${k}`, 5).map((row) => ({ ...row, cells: ['0.0200', '0.0200'] })),
  );
  const { result, charted } = await drift(runoutColumns, rows);
  expect(result.findings).toEqual([]);
  expect(charted.length > 0 || reasonOf(result, 'runout') !== undefined).toBe(true);
});

test('overhauls at the same hours in every unit cannot be charted, and it is said what would settle it', async () => {
  const rows = [1, 2, 3].flatMap((k) =>
    runouts(`H-${k}`, 5).map((row, visit) => ({ ...row, hours: 12_000 * (visit + 1) })),
  );
  const { result, charted } = await drift(runoutColumns, rows);
  expect(charted).toEqual([]);
  expect(reasonOf(result, 'runout')).toMatch(/would settle it/);
});

const clocks = ['12', '3', '6', '9'];
const tipColumns = ['found', 'left'].flatMap((stage) =>
  clocks.map((clock) => `tip_turbine_${stage}_${clock}_mm`),
);

test('missing clock positions: three are charted, two are left out, and nothing is broken', async () => {
  const rows = [1, 2, 3, 4].flatMap((k) => {
    const drawn = drawsFor(`edge/tip/${k}`);
    return runouts(`F-${k}`, 4).map((row, visit) => ({
      ...row,
      cells: [0.1, 0].flatMap((worn, stage) =>
        clocks.map((_, clock) =>
          stage === 0 && ((k === 1 && visit === 1 && clock === 3) || (k === 2 && visit === 2 && clock > 1))
            ? ''
            : drawn.normal(0.6 + worn + 0.03 * clock, 0.01).toFixed(2),
        ),
      ),
    }));
  });
  const { charted } = await drift(tipColumns, rows);
  const readingsOf = (unit: string) =>
    charted.find((one) => one.unit === unit && one.series === 'tip_turbine_mean')?.readings.length;
  expect([1, 2, 3, 4].map((k) => readingsOf(`F-${k}`))).toEqual([8, 7, 8, 8]);
});

test('an offset that no size can have below zero is looked at on its upper side only', async () => {
  const rows = [1, 2, 3, 4].flatMap((k) => {
    const drawn = drawsFor(`edge/offset/${k}`);
    // The gap at 12 is the smaller one: a difference 12 less 6 is negative, its size is not.
    return runouts(`G-${k}`, 4).map((row) => ({
      ...row,
      cells: [0.5, 0.6, 0.7, 0.6, 0.5, 0.6, 0.7, 0.6].map((gap) => drawn.normal(gap, 0.008).toFixed(3)),
    }));
  });
  const { charted } = await drift(tipColumns, rows);
  const offsets = charted.filter(({ series }) => series === 'tip_turbine_offset');
  expect(offsets).toHaveLength(4);
  for (const { sides, readings } of offsets) {
    expect(sides).toBe('upper');
    for (const { value_mm } of readings) expect(value_mm).toBeGreaterThan(0.05);
  }
});
