import fc from 'fast-check';
import { expect, test } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { chanceToFill, fillChance } from '../../../lib/stats/wear/mixtureChance';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { evenly } from './evenly';

const truth = { noise: 0.015, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };
const statistics = wearStatistics(simulateFleet(22, 6, truth).readings);
const line = runLevel(integrateWear(statistics), statistics, 2, statistics.firstRun[2] as number);

function chanceAt(x: number, threshold: number, direction: 1 | -1, noise: 0 | 1) {
  const chance = chanceToFill();
  fillChance(chance, line, x, threshold, direction, noise, 0);
  return chance;
}

const sides = fc.constantFrom<readonly [1 | -1, 0 | 1]>([1, 0], [1, 1], [-1, 0], [-1, 1]);

test('derivatives are those of differences of the chance, on either side, with and without noise', () => {
  const step = 1e-5;
  fc.assert(
    fc.property(evenly(0, 4), evenly(0.1, 0.6), sides, (x, threshold, [direction, noise]) => {
      const { byThreshold, byX } = chanceAt(x, threshold, direction, noise);
      const at = (dx: number, dy: number) => chanceAt(x + dx, threshold + dy, direction, noise).chance;
      // Cubics between 64 points a unit: their derivatives jump by some 1e-6 of the density, which reaches 40 a mm here.
      expect(Math.abs(byThreshold - (at(0, step) - at(0, -step)) / (2 * step))).toBeLessThan(2e-3);
      expect(Math.abs(byX - (at(step, 0) - at(-step, 0)) / (2 * step))).toBeLessThan(2e-3);
    }),
    { seed: 3 },
  );
});

test('chance and the rest add up to 1, and each keeps its digits where it is small', () => {
  fc.assert(
    fc.property(evenly(0, 4), evenly(0.1, 0.6), sides, (x, threshold, [direction, noise]) => {
      const { chance, otherwise } = chanceAt(x, threshold, direction, noise);
      expect(chance + otherwise).toBeCloseTo(1, 12);
      const mirrored = chanceAt(x, threshold, direction === 1 ? -1 : 1, noise);
      expect(otherwise).toBeCloseTo(mirrored.chance, 14);
    }),
    { seed: 4 },
  );
  const far = chanceAt(0, 0.4, 1, 1);
  expect(far.otherwise).toBeGreaterThan(0);
  expect(far.otherwise).toBeLessThan(1e-4);
  expect(far.otherwise / chanceAt(0, 0.4, -1, 1).chance).toBeCloseTo(1, 9);
});
