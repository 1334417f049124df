import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { openAnalysis } from '../../lib/analysis/openAnalysis';
import type { FleetResult, MarginRow } from '../../lib/analysis/types';
import { openNodeDatabase } from '../../lib/store/nodeDatabase';
import { filesOf } from '../support/withRecords';

interface TrueSeries {
  readonly series: string;
  readonly rate_mm_per_10kh: number;
  readonly level_now_mm: number | null;
}

const truth: { units: { unit: string; series: TrueSeries[] }[] } = JSON.parse(
  readFileSync('data/demo-truth/truth.json', 'utf8'),
);

function trueSeries(unit: string, series: string): TrueSeries & { readonly level_now_mm: number } {
  const found = truth.units.find((one) => one.unit === unit)?.series.find((one) => one.series === series);
  if (found === undefined || found.level_now_mm === null) throw new Error(`no truth for ${unit} ${series}`);
  return { ...found, level_now_mm: found.level_now_mm };
}

let fleet: FleetResult;

beforeAll(async () => {
  const database = await openNodeDatabase();
  const settings = { asOf: null, groupBy: 'frame' } as const;
  fleet = (
    await openAnalysis(await database.connect(), filesOf('data/demo'), 'demo', settings, async () => {})
  ).fleet;
  await database.close();
});

function margin(unit: string, series: string): MarginRow {
  const found = fleet.margins.find(
    (row) => row.unit === unit && row.series === series && row.limitKind === 'upper',
  );
  if (found === undefined) throw new Error(`no margin for ${unit} ${series}`);
  return found;
}

/** 90 % point of the standard normal: half width of an 80 % interval in standard deviations. */
const eighty = 1.2816;

describe.each([
  ['the fast thrust bearing', 'O-3005', 'thrust_play'],
  ['the drifting runout', 'H-2005', 'runout'],
])('%s of %s agrees with the generator’s truth', (_, unit, series) => {
  it('level within its 80 % interval', () => {
    const row = margin(unit, series);
    const { level_now_mm } = trueSeries(unit, series);
    expect(Math.abs((row.level_mm as number) - level_now_mm)).toBeLessThan(
      eighty * (row.levelSd_mm as number),
    );
  });

  it('time to the limit between early and late, or not before the rated life ends where that caps it', () => {
    const row = margin(unit, series);
    const { level_now_mm, rate_mm_per_10kh } = trueSeries(unit, series);
    const hours = (((row.limit_mm as number) - level_now_mm) / rate_mm_per_10kh) * 10_000;
    if (row.cappedByRatedLife && row.hoursLate === row.hoursEarly) {
      expect(hours).toBeGreaterThan(row.hoursLate as number);
    } else {
      expect(hours).toBeGreaterThanOrEqual(row.hoursEarly as number);
      expect(hours).toBeLessThanOrEqual(row.hoursLate as number);
    }
  });
});

describe('the demo fleet as a whole', () => {
  it('80 % intervals of the level hold the truth for 74 to 88 % of all unit series', () => {
    let inside = 0;
    let all = 0;
    for (const row of fleet.margins) {
      const found = truth.units
        .find((one) => one.unit === row.unit)
        ?.series.find((one) => one.series === row.series);
      if (row.level_mm === null || found === undefined || found.level_now_mm === null) continue;
      all++;
      if (Math.abs(row.level_mm - found.level_now_mm) < eighty * (row.levelSd_mm as number)) inside++;
    }
    expect(all).toBeGreaterThan(400);
    // Series of one unit share their readings, so the share of ~500 is known about as well as one of 120: +- 7 points.
    expect(inside / all).toBeGreaterThan(0.74);
    expect(inside / all).toBeLessThan(0.88);
  });

  it('names the fast unit among those that cannot wait', () => {
    const chances = fleet.margins
      .filter((row) => (row.chanceAtNextOverhaul ?? 0) > 0.1)
      .map((row) => row.unit);
    expect(chances).toContain('O-3005');
  });

  it('holds exactly the rows that the generator spoilt', () => {
    const held: { file: string; line: number }[] = JSON.parse(
      readFileSync('data/demo-truth/truth.json', 'utf8'),
    ).held.list;
    const rows = (list: readonly { file: string; row: number }[]) =>
      [...new Set(list.map((p) => `${p.file}:${p.row}`))].sort();
    expect(rows(fleet.problems.filter((problem) => problem.action === 'held'))).toEqual(
      rows(held.map((one) => ({ file: one.file, row: one.line }))),
    );
  });

  it('every chance rises with the date and every number is finite', () => {
    for (const row of fleet.margins) {
      for (const [name, value] of Object.entries(row)) {
        if (typeof value === 'number')
          expect(Number.isFinite(value), `${row.unit} ${row.series} ${name}`).toBe(true);
      }
      if (row.slope_mm_per_10kh === null || row.chanceByQuarter.length === 0) continue;
      expect(row.chanceByQuarter.every((chance) => chance >= 0 && chance <= 1)).toBe(true);
    }
  });
});
