import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { drawGroup } from '../../../lib/stats/draws/groupDraws';
import { normalTable } from '../../../lib/stats/draws/normalTable';
import { seededStream } from '../../../lib/stats/draws/seededStream';
import { drawUnit, type UnitDraws } from '../../../lib/stats/draws/unitDraws';
import { levelAt, levelQuantile, slopeOf } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';

const truth = { noise: 0.012, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };
const statistics = wearStatistics(simulateFleet(5, 8, truth).readings);
const posterior = integrateWear(statistics);
const count = 8_000;
/** Half width, in standard errors, within which all of some hundred shares lie but for one time in a hundred. */
const FAR = 4;

const group = (seed: number) => drawGroup(posterior, seededStream(seed, 'group'), count);
const lastRun = (unit: number) => (statistics.firstRun[unit + 1] as number) - 1;

function drawsOf(unit: number | null, run: number | null, name: string, seed = 1): UnitDraws {
  return drawUnit(posterior, statistics, group(seed), { unit, run, nextRuns: 2 }, seededStream(seed, name));
}

const levels = (draws: UnitDraws, run: number, x: number) =>
  Float64Array.from(
    draws.start_mm.subarray(run * count, (run + 1) * count),
    (start, draw) => start + x * (draws.slope_mm_per_10kh[run * count + draw] as number),
  );
const mean = (values: ArrayLike<number>) =>
  Array.from(values).reduce((sum, value) => sum + value, 0) / values.length;
const covariance = (one: ArrayLike<number>, other: ArrayLike<number>) => {
  const [meanOne, meanOther] = [mean(one), mean(other)];
  return mean(Array.from(one, (value, k) => (value - meanOne) * ((other[k] as number) - meanOther)));
};

describe('draws have the marginals of the mixture', () => {
  const cases = [
    ['the present run of a unit', 2, lastRun(2), 0],
    ['a new run of a unit', 2, lastRun(2), 1],
    ['its second new run', 2, lastRun(2), 2],
    ['a present run without readings', 4, null, 0],
    ['a unit not seen', null, null, 1],
  ] as const;

  it.each(cases)('%s', (_, unit, run, at) => {
    const draws = drawsOf(unit, run, 'unit');
    const mixture = runLevel(posterior, statistics, unit, at === 0 ? run : null);
    for (const x of [0, 0.7, 1.5, 3]) {
      const drawn = levels(draws, at, x);
      const exact = levelAt(mixture, x);
      expect(Math.abs(mean(drawn) - exact.mean)).toBeLessThan((FAR * exact.sd) / Math.sqrt(count));
      // The standard error of a standard deviation of nearly normal draws is sd / sqrt(2 n).
      expect(Math.abs(Math.sqrt(covariance(drawn, drawn)) / exact.sd - 1)).toBeLessThan(
        1.5 * FAR * Math.sqrt(0.5 / count),
      );
      for (const p of [0.02, 0.1, 0.5, 0.9, 0.98]) {
        const quantile = levelQuantile(mixture, x, p);
        const below = drawn.filter((level) => level <= quantile).length / count;
        expect(Math.abs(below - p), `${x} ${p}`).toBeLessThan(FAR * Math.sqrt((p * (1 - p)) / count));
      }
    }
    const slopes = draws.slope_mm_per_10kh.subarray(at * count, (at + 1) * count);
    expect(Math.abs(mean(slopes) - slopeOf(mixture).mean)).toBeLessThan(
      (FAR * slopeOf(mixture).sd) / Math.sqrt(count),
    );
  });
});

describe('draws of several units', () => {
  it('of units not seen hang together by the fixed effects that they share, and by nothing else', () => {
    const [one, other] = [drawsOf(null, null, 'one'), drawsOf(null, null, 'other')];
    const { weight, beta1, s2, inverse11, degreesOfFreedom } = posterior;
    const factor = degreesOfFreedom / (degreesOfFreedom - 2);
    const average = weight.reduce((sum, share, k) => sum + share * (beta1[k] as number), 0);
    const shared = weight.reduce((sum, share, k) => {
      const between = ((beta1[k] as number) - average) ** 2;
      return sum + share * (factor * (s2[k] as number) * (inverse11[k] as number) + between);
    }, 0);
    const [slopes, others] = [one, other].map((draws) => draws.slope_mm_per_10kh.subarray(0, count));
    if (slopes === undefined || others === undefined) throw new Error('no draws');
    const spread = Math.sqrt(covariance(slopes, slopes) * covariance(others, others));
    const correlation = covariance(slopes, others) / spread;
    expect(shared / spread).toBeGreaterThan(0.1);
    expect(Math.abs(correlation - shared / spread)).toBeLessThan(FAR / Math.sqrt(count));
  });

  it('runs of one unit hang together more than runs of different units', () => {
    const draws = drawsOf(2, lastRun(2), 'unit');
    const next = (run: number) => draws.slope_mm_per_10kh.subarray(run * count, (run + 1) * count);
    expect(covariance(next(1), next(2))).toBeGreaterThan(0.3 * covariance(next(1), next(1)));
  });
});

describe('seeds', () => {
  it('the same seed and name give the same draws, another seed or name others', () => {
    const draws = drawsOf(1, lastRun(1), 'unit', 7);
    expect(drawsOf(1, lastRun(1), 'unit', 7)).toEqual(draws);
    expect(drawsOf(1, lastRun(1), 'unit', 8).start_mm).not.toEqual(draws.start_mm);
    expect(drawsOf(1, lastRun(1), 'another', 7).start_mm).not.toEqual(draws.start_mm);
  });

  it('gives these very numbers on every machine', () => {
    const normals = new Float64Array(4);
    seededStream(1, 'fixed').normals(normals);
    expect([...normals].map((value) => value.toFixed(9))).toEqual([
      '-1.547866070',
      '0.011876438',
      '1.403484391',
      '0.259947095',
    ]);
  });
});

describe('normalTable', () => {
  it('has mean 0, variance 1 and kurtosis 3 to 0.1 %', () => {
    const table = normalTable();
    expect(mean(table)).toBeCloseTo(0, 12);
    expect(mean(table.map((z) => z * z))).toBeCloseTo(1, 12);
    expect(Math.abs(mean(table.map((z) => z ** 4)) - 3)).toBeLessThan(0.003);
  });
});

describe('drawGroup', () => {
  it('takes every node as often as its weight says, to within one draw', () => {
    const { node } = group(3);
    posterior.weight.forEach((weight, k) => {
      expect(Math.abs(node.filter((drawn) => drawn === k).length - weight * count)).toBeLessThanOrEqual(1);
    });
  });

  it('refuses a number of draws that is none', () => {
    expect(() => drawGroup(posterior, seededStream(1, 'x'), 0)).toThrow(
      'positive whole number of draws, got 0',
    );
  });
});
