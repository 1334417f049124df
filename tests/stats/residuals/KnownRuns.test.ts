import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KnownRuns } from '../../../lib/stats/residuals/KnownRuns';
import { takenReadings } from '../../../lib/stats/residuals/TakenReadings';
import { together, unitsOf } from '../../../lib/stats/residuals/unitsOf';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import type { WearStatistics } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { arbitraryFleet } from '../wear/arbitraryFleet';

const columns = ['n', 'sx', 'sxx', 'sxxCentred', 'sxyCentred', 'syyCentred', 'minX', 'maxX'] as const;

/** Sums of numbers up to 10: equal to rounding; y may be counted from another centre. */
function expectSame(found: WearStatistics, expected: WearStatistics): void {
  expect(found.unitNames).toEqual(expected.unitNames);
  expect(found.runNames).toEqual(expected.runNames);
  expect([...found.firstRun]).toEqual([...expected.firstRun]);
  expect([...found.count]).toEqual([...expected.count]);
  expect(found.readings).toBe(expected.readings);
  const shift = found.yCentre - expected.yCentre;
  expected.n.forEach((n, run) => {
    for (const name of columns) expect(found[name][run], name).toBeCloseTo(expected[name][run] as number, 11);
    expect((found.sy[run] as number) + shift * n).toBeCloseTo(expected.sy[run] as number, 11);
  });
}

test('what is known after any number of readings is what they give when summed anew', () => {
  fc.assert(
    fc.property(arbitraryFleet, fc.nat(), fc.nat(), (readings, anyUnit, anyCount) => {
      // Runs by turns: each is opened again.
      const mixed = readings.toSorted((one, other) => one.x - other.x);
      const statistics = wearStatistics(mixed);
      const { taken } = takenReadings(statistics, mixed);
      const unit = anyUnit % statistics.unitNames.length;
      const own = mixed.filter((reading) => reading.unit === statistics.unitNames[unit]);
      const count = 1 + (anyCount % own.length);
      const known = new KnownRuns(statistics, taken);
      // What another unit left behind must not show.
      known.begin((unit + 1) % statistics.unitNames.length);
      known.take();
      known.begin(unit);
      while (known.readings < count) known.take();
      const expected = wearStatistics(own.slice(0, count));
      expectSame(known.statisticsKnown(), expected);
      expect(known.readingsOf(known.open)).toBeGreaterThan(0);
      const { runs } = wearWorkspace(known.statisticsKnown());
      const written = known.records.slice(0, 10 * known.runs).filter((_, k) => {
        return known.readingsOf(Math.floor(k / 10)) > 0;
      });
      written.forEach((value, k) => {
        expect(value).toBeCloseTo(runs[k] as number, 10);
      });
    }),
    { seed: 2 },
  );
});

test('units taken apart and put together are the units as they were', () => {
  fc.assert(
    fc.property(arbitraryFleet, fc.nat(), (readings, any) => {
      const statistics = wearStatistics(readings);
      const units = statistics.unitNames.length;
      const cut = any % (units + 1);
      const [one, other] = [unitsOf(statistics, 0, cut), unitsOf(statistics, cut, units)];
      expect(one.readings + other.readings).toBe(statistics.readings);
      expect(together([one, other])).toEqual({ ...statistics, logWeightSum: 0 });
    }),
    { seed: 3 },
  );
});

test('readings that are not those of the statistics are refused', () => {
  const readings = [0, 1, 2].map((x) => ({ unit: 'U', run: 'a', x, y: 0.2 + 0.1 * x }));
  const statistics = wearStatistics(readings);
  const last = readings[2] as (typeof readings)[number];
  expect(() => takenReadings(statistics, [...readings, last])).toThrow('another of unit U run a');
  expect(() => takenReadings(statistics, [{ ...last, run: 'b' }])).toThrow('another of unit U run b');
});
