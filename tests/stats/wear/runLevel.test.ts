import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import { levelAt } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { evaluateNodes, NODE } from '../../../lib/stats/wear/nodeGrid';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import type { WearPosterior, WearStatistics } from '../../../lib/stats/wear/types';
import { unitRate } from '../../../lib/stats/wear/unitRate';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { arbitraryFleet, arbitraryRatios } from './arbitraryFleet';
import { denseFit, type Ratios } from './denseModel';
import { oneNodePosterior } from './oneNodePosterior';
import { readFleet, readReference } from './readFleet';

/** A posterior with a single node at given ratios: everything is then closed form. */
function posteriorAt(statistics: WearStatistics, ratios: Ratios): WearPosterior {
  const squared = Float64Array.from([...ratios.map((ratio) => ratio * ratio), 0]);
  const nodes = evaluateNodes(wearWorkspace(statistics), squared);
  const degreesOfFreedom = statistics.readings - 4;
  expect(nodes).toHaveLength(NODE);
  const [beta0, beta1, inverse00, inverse01, inverse11, rss] = nodes.slice(1, 7) as unknown as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return oneNodePosterior({
    ratios,
    beta: [beta0, beta1],
    inverse: [inverse00, inverse01, inverse11],
    s2: rss / degreesOfFreedom,
    degreesOfFreedom,
    yCentre: statistics.yCentre,
  });
}

const closeTo = (actual: number | undefined, expected: number | undefined, scale: number) =>
  expect(Math.abs((actual as number) - (expected as number))).toBeLessThanOrEqual(1e-9 * scale);

describe('runLevel', () => {
  it('equals the conditional normal of the whole model: a run, a new run, a new unit', () => {
    fc.assert(
      fc.property(arbitraryFleet, arbitraryRatios, (readings, ratios) => {
        const statistics = wearStatistics(readings);
        const posterior = posteriorAt(statistics, ratios);
        const dense = denseFit(readings, ratios);
        const s2 = dense.residualSquares / (readings.length - 4);
        const cases = [
          {
            line: runLevel(posterior, statistics, 0, 0),
            expected: dense.line('U0', statistics.runNames[0] ?? ''),
          },
          { line: runLevel(posterior, statistics, 0, null), expected: dense.line('U0', 'new run') },
          { line: runLevel(posterior, statistics, null, null), expected: dense.line('new unit', 'new run') },
        ];
        for (const { line, expected } of cases) {
          closeTo(line.start[0], expected.mean[0], 1);
          closeTo(line.slope[0], expected.mean[1], 1);
          const [first, second] = expected.covariance;
          closeTo(line.startStart[0], s2 * (first?.[0] as number), s2 * 30);
          closeTo(line.startSlope[0], s2 * (first?.[1] as number), s2 * 30);
          closeTo(line.slopeSlope[0], s2 * (second?.[1] as number), s2 * 30);
        }
      }),
      { numRuns: 60, seed: 3 },
    );
  });

  it('reproduces the unit coefficients of the sleep study to 4 decimals', () => {
    const statistics = wearStatistics(readFleet('wear/sleepstudy.csv'));
    const { startRun, slopeRun, startUnit, slopeUnit } = fitWear(statistics).ratios;
    const posterior = posteriorAt(statistics, [startRun, slopeRun, startUnit, slopeUnit]);
    const { sleepstudy } = readReference<{
      sleepstudy: { unit_coefficients: Record<string, readonly [number, number]> };
    }>('wear/reference.json');
    const units = Object.entries(sleepstudy.unit_coefficients);
    expect(units).toHaveLength(18);
    for (const [unit, [start, slope]] of units) {
      const line = runLevel(posterior, statistics, statistics.unitNames.indexOf(unit), null);
      expect(Math.abs((line.start[0] as number) - start)).toBeLessThan(1e-4);
      expect(Math.abs((line.slope[0] as number) - slope)).toBeLessThan(1e-4);
    }
  });

  it('takes earlier readings of a unit from other statistics, whatever their centre', () => {
    const truth = { noise: 0.012, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };
    const { readings } = simulateFleet(9, 6, truth);
    const statistics = wearStatistics(readings);
    const posterior = integrateWear(statistics);
    const own = wearStatistics(readings.filter(({ unit }) => unit === 'U3'));
    expect(own.yCentre).not.toBe(statistics.yCentre);
    const whole = runLevel(posterior, statistics, 2, statistics.firstRun[2] as number);
    const alone = runLevel(posterior, own, 0, 0);
    const [expected, actual] = [levelAt(whole, 1.5), levelAt(alone, 1.5)];
    expect(actual.mean).toBeCloseTo(expected.mean, 12);
    expect(actual.sd).toBeCloseTo(expected.sd, 12);
  });

  it('refuses a run of another unit', () => {
    const statistics = wearStatistics(simulateFleet(1, 3, trueRates).readings);
    const posterior = integrateWear(statistics);
    expect(() => runLevel(posterior, statistics, 0, statistics.firstRun[1] as number)).toThrow(
      'a run of the unit',
    );
    expect(() => runLevel(posterior, statistics, 3, null)).toThrow('a unit below 3, got 3');
    expect(() => runLevel(posterior, statistics, null, 0)).toThrow('a run of the unit');
  });
});

const trueRates = { noise: 0.01, startRun: 0.01, slopeRun: 0.01, startUnit: 0.01, slopeUnit: 0.02 };

describe('unitRate', () => {
  it('is the slope of a new run without the run spread, joint with the group rate', () => {
    fc.assert(
      fc.property(arbitraryFleet, arbitraryRatios, (readings, [startRun, slopeRun, startUnit, slopeUnit]) => {
        const statistics = wearStatistics(readings);
        const ratios: Ratios = [startRun, slopeRun, startUnit, slopeUnit];
        const posterior = posteriorAt(statistics, ratios);
        const rate = unitRate(posterior, statistics, 1);
        const run = runLevel(posterior, statistics, 1, null);
        const s2 = posterior.s2[0] as number;
        closeTo(rate.start[0], run.slope[0], 1);
        closeTo(rate.startStart[0], (run.slopeSlope[0] as number) - s2 * slopeRun ** 2, 40 * s2);
        closeTo(rate.slope[0], posterior.beta1[0], 1);
        closeTo(rate.slopeSlope[0], s2 * (posterior.inverse11[0] as number), s2);
        // Difference unit - group has the variance that the dense model gives to u[unit].
        const difference =
          (rate.startStart[0] as number) -
          2 * (rate.startSlope[0] as number) +
          (rate.slopeSlope[0] as number);
        closeTo(difference, s2 * denseFit(readings, ratios).departure('U1'), 40 * s2);
      }),
      { numRuns: 40, seed: 4 },
    );
  });
});
