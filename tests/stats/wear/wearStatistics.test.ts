import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import type { WearReading, WearRow } from '../../../lib/stats/wear/types';
import { intervalWeight, wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { wearStatisticsFromRows } from '../../../lib/stats/wear/wearStatisticsFromRows';
import { arbitraryFleet } from './arbitraryFleet';

/** One row a run by the definitions, in another order of summation than the code's. */
function summedRows(readings: readonly WearReading[]): readonly WearRow[] {
  const runs = new Map<string, WearReading[]>();
  for (const reading of readings) {
    const key = `${reading.unit} ${reading.run}`;
    runs.set(key, [...(runs.get(key) ?? []), reading]);
  }
  return [...runs.values()].map((members) => {
    const { unit, run } = members[0] as WearReading;
    const sum = (value: (reading: WearReading) => number) =>
      [...members].reverse().reduce((total, reading) => total + (reading.weight ?? 1) * value(reading), 0);
    const n = sum(() => 1);
    const mean_x = sum(({ x }) => x) / n;
    const mean_y = sum(({ y }) => y) / n;
    return {
      unit,
      run,
      count: members.length,
      n,
      mean_x,
      mean_y,
      sxx_c: sum(({ x }) => (x - mean_x) ** 2),
      sxy_c: sum(({ x, y }) => (x - mean_x) * (y - mean_y)),
      syy_c: sum(({ y }) => (y - mean_y) ** 2),
      min_x: Math.min(...members.map(({ x }) => x)),
      max_x: Math.max(...members.map(({ x }) => x)),
      log_weight_sum: members.reduce((total, { weight = 1 }) => total + Math.log(weight), 0),
    };
  });
}

describe('wear statistics', () => {
  it('are the same from summed rows as from readings', () => {
    fc.assert(
      fc.property(arbitraryFleet, (readings) => {
        const direct = wearStatistics(readings);
        const fromRows = wearStatisticsFromRows(summedRows(readings));
        expect(fromRows.unitNames).toEqual(direct.unitNames);
        expect(fromRows.runNames).toEqual(direct.runNames);
        expect([...fromRows.firstRun]).toEqual([...direct.firstRun]);
        expect([...fromRows.count]).toEqual([...direct.count]);
        expect(fromRows.readings).toBe(readings.length);
        expect(fromRows.logWeightSum).toBeCloseTo(direct.logWeightSum, 10);
        for (const field of ['n', 'sx', 'sxx', 'sy', 'sxy', 'syy', 'minX', 'maxX'] as const) {
          for (const [r, value] of fromRows[field].entries()) {
            expect(value).toBeCloseTo(direct[field][r] as number, 10);
          }
        }
      }),
      { numRuns: 50, seed: 8 },
    );
  });

  it('are sums about the start of the run and the mean reading', () => {
    const { sx, sxx, sxy, syy, yCentre, firstRun } = wearStatistics([
      { unit: 'A', run: '1', x: 1, y: 2 },
      { unit: 'B', run: '1', x: 2, y: 4 },
      { unit: 'A', run: '1', x: 3, y: 6 },
    ]);
    expect(yCentre).toBe(4);
    expect([...sx]).toEqual([4, 2]);
    expect([...sxx]).toEqual([10, 4]);
    expect([...sxy]).toEqual([4, 0]);
    expect([...syy]).toEqual([8, 0]);
    expect([...firstRun]).toEqual([0, 1, 2]);
  });

  it('tell runs of the same name in different units apart, in any order of readings', () => {
    const { runNames, unitNames } = wearStatistics([
      { unit: 'A', run: '1', x: 0, y: 1 },
      { unit: 'B', run: '1', x: 0, y: 1 },
      { unit: 'A', run: '2', x: 0, y: 1 },
      { unit: 'A', run: '1', x: 1, y: 1 },
    ]);
    expect(unitNames).toEqual(['A', 'B']);
    expect(runNames).toEqual(['1', '2', '1']);
  });

  it('refuse what is not a number or comes twice', () => {
    const reading = { unit: 'A', run: '1', x: 0, y: 1 };
    expect(() => wearStatistics([{ ...reading, y: Number.NaN }])).toThrow('finite x and y');
    expect(() => wearStatistics([{ ...reading, weight: 0 }])).toThrow('a positive weight');
    const [row] = summedRows([reading]) as [WearRow];
    expect(() => wearStatisticsFromRows([row, row])).toThrow('one row a run, got unit A run 1 twice');
    expect(() => wearStatisticsFromRows([{ ...row, n: 0 }])).toThrow('at least one reading a run');
    expect(() => wearStatisticsFromRows([{ ...row, sxy_c: Number.POSITIVE_INFINITY }])).toThrow(
      'finite sums',
    );
  });

  it('give no readings no centre', () => {
    expect(wearStatistics([])).toMatchObject({ readings: 0, yCentre: 0, unitNames: [] });
  });
});

describe('interval readings', () => {
  it('weigh noise variance over noise variance plus width squared / 12', () => {
    expect(intervalWeight(0.01, 0)).toBe(1);
    expect(intervalWeight(0.01, 0.05)).toBeCloseTo(1e-4 / (1e-4 + 0.0025 / 12), 12);
    expect(() => intervalWeight(0, 0.05)).toThrow('a positive noise');
    expect(() => intervalWeight(0.01, -1)).toThrow('a width of at least 0');
  });

  it('count less: a wild interval reading moves the slope less than a wild plain one', () => {
    const base = ['A', 'B', 'C'].flatMap((unit, i) =>
      [0, 1, 2].map((x) => ({ unit, run: '1', x, y: 0.2 + 0.08 * x + 0.01 * ((i + 2 * x) % 3) })),
    );
    const wild = (weight: number) =>
      fitWear(wearStatistics([...base, { unit: 'A', run: '1', x: 2, y: 0.6, weight }])).slope_mm_per_10kh;
    const without = fitWear(wearStatistics(base)).slope_mm_per_10kh;
    expect(wild(0.05) - without).toBeGreaterThan(0);
    expect(wild(0.05) - without).toBeLessThan(wild(1) - without);
  });
});
