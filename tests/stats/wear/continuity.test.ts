import fc from 'fast-check';
import { expect, test } from 'vitest';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import { levelAt } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import type { WearReading, WearStatistics } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

/** Units of one or two runs of two readings, wearing alike: run and unit share their spread, and the slopes spread by nothing. */
function alikeFleet(seed: number, units: number, runsOf: (unit: number) => number): readonly WearReading[] {
  const { uniform, normal } = seededDraws(seed);
  return Array.from({ length: units }, (_, unit) => {
    const start = 0.2 + 0.03 * normal();
    return Array.from({ length: runsOf(unit) }, (__, run) =>
      [0.1 * uniform(), 0.8 + 0.6 * uniform()].map((x) => ({
        unit: `U${unit}`,
        run: `U${unit}-${run}`,
        x,
        y: start + 0.08 * x + 0.01 * normal(),
      })),
    ).flat();
  }).flat();
}

/** The statistics with every sum of y off by one unit in the last place or so. */
function shaken(statistics: WearStatistics, seed: number): WearStatistics {
  const { uniform } = seededDraws(seed);
  const shake = (column: Float64Array) => column.map((sum) => sum * (1 + (uniform() < 0.5 ? -1e-15 : 1e-15)));
  return {
    ...statistics,
    sy: shake(statistics.sy),
    sxy: shake(statistics.sxy),
    syy: shake(statistics.syy),
    sxyCentred: shake(statistics.sxyCentred),
    syyCentred: shake(statistics.syyCentred),
  };
}

const sds = (statistics: WearStatistics) => {
  const posterior = integrateWear(statistics);
  return statistics.unitNames.flatMap((_, unit) => {
    const run = statistics.firstRun[unit] as number;
    return [
      levelAt(runLevel(posterior, statistics, unit, run), 1.2).sd,
      levelAt(runLevel(posterior, statistics, unit, null), 1).sd,
    ];
  });
};

test('rounding of the sums changes no SD of a level by more than a millionth, where runs and units cannot be told apart either', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 12, max: 20 }),
      fc.constantFrom(
        (_: number) => 1,
        (unit: number) => 1 + Number(unit % 3 === 0),
      ),
      (seed, units, runsOf) => {
        const statistics = wearStatistics(alikeFleet(seed, units, runsOf));
        const before = sds(statistics);
        for (const [k, sd] of sds(shaken(statistics, seed)).entries())
          expect(Math.abs(sd / (before[k] as number) - 1)).toBeLessThan(1e-6);
      },
    ),
    { seed: 1, numRuns: 20 },
  );
}, 120_000);
