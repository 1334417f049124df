import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import studentQuantile from '@stdlib/stats-base-dists-t-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import {
  chancePast,
  levelAt,
  levelQuantile,
  readingQuantile,
  slopeOf,
} from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { chanceToFill, fillChance } from '../../../lib/stats/wear/mixtureChance';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import type { LineMixture } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { evenly } from './evenly';
import { oneLine, ownLineMixture } from './ownLineMixture';
import { readReference } from './readFleet';

interface Prediction {
  readonly x: number[];
  readonly y: number[];
  readonly L: number;
  readonly t: number[];
  readonly F_line: number[];
  readonly F_new_reading: number[];
}

/** Probability that a reading at x lies below y, with any extra variance. */
function readingProbability(mixture: LineMixture, x: number, y_mm: number, extraVariance = 0): number {
  const chance = chanceToFill();
  fillChance(chance, mixture, x, y_mm, 1, 1, extraVariance);
  return chance.chance;
}

const truth = { noise: 0.015, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };
const statistics = wearStatistics(simulateFleet(21, 6, truth).readings);
const line = runLevel(integrateWear(statistics), statistics, 1, statistics.firstRun[1] as number);

describe('chance and quantiles of a single straight line', () => {
  const { x, y, L, t, F_line, F_new_reading } = readReference<{ t_predictive_cdf: Prediction }>(
    'wear/inverse_prediction.json',
  ).t_predictive_cdf;
  const own = ownLineMixture(x, y);

  it('equals the published-method values of R for the line and for a new reading, to 1e-8', () => {
    expect(t).toHaveLength(8);
    t.forEach((at, k) => {
      expect(chancePast(own, L, 'upper', at)).toBeCloseTo(F_line[k] as number, 8);
      expect(1 - readingProbability(own, at, L)).toBeCloseTo(F_new_reading[k] as number, 8);
    });
  });

  it('has quantiles, mean and standard deviation of Student t', () => {
    const nu = own.table.degreesOfFreedom;
    const at = 50;
    const centre = (own.start[0] as number) + (own.slope[0] as number) * at;
    const scale = Math.sqrt(
      (own.startStart[0] as number) +
        2 * at * (own.startSlope[0] as number) +
        at ** 2 * (own.slopeSlope[0] as number),
    );
    for (const p of [0.001, 0.1, 0.5, 0.9, 0.999]) {
      expect(levelQuantile(own, at, p)).toBeCloseTo(centre + scale * studentQuantile(p, nu), 7);
    }
    expect(levelAt(own, at).mean).toBeCloseTo(centre, 12);
    expect(levelAt(own, at).sd).toBeCloseTo(scale * Math.sqrt(nu / (nu - 2)), 12);
    const slopeScale = Math.sqrt(own.slopeSlope[0] as number);
    expect(slopeOf(own).sd).toBeCloseTo(slopeScale * Math.sqrt(nu / (nu - 2)), 12);
  });

  it('adds the noise and an interval variance to a reading', () => {
    const flat = oneLine({
      start: 0.3,
      slope: 0,
      startStart: 9e-4,
      startSlope: 0,
      slopeSlope: 0,
      s2: 7e-4,
      degreesOfFreedom: 9,
    });
    const expected = 0.3 + 0.05 * studentQuantile(0.9, 9);
    expect(readingQuantile(flat, 2, 0.9, 9e-4)).toBeCloseTo(expected, 7);
    expect(readingProbability(flat, 2, 0.35, 9e-4)).toBeCloseTo(studentCdf(1, 9), 9);
  });
});

describe('chance and quantiles of a mixture', () => {
  it('never falls as an upper limit comes down or a lower one goes up, and mirrors', () => {
    fc.assert(
      fc.property(evenly(0, 5), evenly(-1, 2), evenly(0, 1), (x, limit, step) => {
        expect(chancePast(line, limit, 'upper', x)).toBeGreaterThanOrEqual(
          chancePast(line, limit + step, 'upper', x),
        );
        expect(chancePast(line, limit + step, 'lower', x)).toBeGreaterThanOrEqual(
          chancePast(line, limit, 'lower', x),
        );
        const both = chancePast(line, limit, 'upper', x) + chancePast(line, limit, 'lower', x);
        expect(both).toBeCloseTo(1, 9);
      }),
      { seed: 5 },
    );
  });

  it('has quantiles that the probability gives back, in order', () => {
    fc.assert(
      fc.property(evenly(0, 8), evenly(0.001, 0.999), evenly(0.001, 0.999), (x, one, other) => {
        const reading = readingQuantile(line, x, one);
        expect(readingProbability(line, x, reading)).toBeCloseTo(one, 6);
        const level = levelQuantile(line, x, one);
        expect(chancePast(line, level, 'lower', x)).toBeCloseTo(one, 6);
        const [low, high] = [Math.min(one, other), Math.max(one, other)];
        expect(levelQuantile(line, x, high)).toBeGreaterThanOrEqual(levelQuantile(line, x, low) - 1e-9);
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  it('refuses a probability of 0 or 1', () => {
    expect(() => levelQuantile(line, 1, 0)).toThrow('a probability inside 0 to 1, got 0');
    expect(() => readingQuantile(line, 1, 1)).toThrow('a probability inside 0 to 1, got 1');
  });

  it('stays finite far away', () => {
    for (const x of [0, 1, 100, 1e4]) {
      for (const limit of [-1e6, 0, 0.45, 1e6]) {
        const chance = chancePast(line, limit, 'upper', x);
        expect(chance).toBeGreaterThanOrEqual(0);
        expect(chance).toBeLessThanOrEqual(1);
      }
      expect(Number.isFinite(levelQuantile(line, x, 1e-6))).toBe(true);
    }
  });
});
