import fc from 'fast-check';
import { expect, test } from 'vitest';
import { aboutCentre } from '../../../lib/stats/residuals/aboutCentre';
import { firstReadings } from '../../../lib/stats/residuals/firstReadings';
import type { WearStatistics } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

const reading = fc.record({
  unit: fc.constant('U'),
  run: fc.constantFrom('a', 'b', 'c'),
  x: fc.double({ min: 0, max: 3, noNaN: true }),
  y: fc.double({ min: 0.1, max: 1, noNaN: true }),
  weight: fc.constantFrom(1, 0.25),
});

/** Sums of numbers up to 10: equal to rounding. */
function expectSame(found: WearStatistics, expected: WearStatistics): void {
  expect(found.unitNames).toEqual(expected.unitNames);
  expect(found.runNames).toEqual(expected.runNames);
  expect([...found.firstRun]).toEqual([...expected.firstRun]);
  expect([...found.count]).toEqual([...expected.count]);
  expect(found.readings).toBe(expected.readings);
  expect(found.logWeightSum).toBeCloseTo(expected.logWeightSum, 12);
  const columns = ['n', 'sx', 'sxx', 'sy', 'sxy', 'syy', 'sxxCentred', 'sxyCentred', 'syyCentred'] as const;
  for (const name of [...columns, 'minX', 'maxX'] as const)
    found[name].forEach((value, run) => {
      expect(value, `${name} of run ${run}`).toBeCloseTo(expected[name][run] as number, 11);
    });
}

test('gives what all runs summed anew give, whatever the order in which numbers are asked for', () => {
  fc.assert(
    fc.property(
      fc.array(reading, { minLength: 1, maxLength: 12 }),
      fc.array(fc.nat(), { minLength: 1, maxLength: 6 }),
      (own, asked) => {
        const centre = 0.37;
        const statisticsOf = firstReadings(own, centre);
        for (const any of asked) {
          const count = 1 + (any % own.length);
          expectSame(statisticsOf(count), aboutCentre(wearStatistics(own.slice(0, count)), centre));
        }
      },
    ),
  );
});
