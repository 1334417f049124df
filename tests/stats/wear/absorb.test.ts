import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wearWorkspace } from '../../../lib/stats/wear/absorb';
import { ratioCriterion } from '../../../lib/stats/wear/ratioCriterion';
import type { WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { arbitraryFleet, arbitraryRatios } from './arbitraryFleet';
import { denseFit, type Ratios } from './denseModel';
import { evenly } from './evenly';

function absorbed(readings: readonly WearReading[], ratios: Ratios, degrees: number) {
  const statistics = wearStatistics(readings);
  const criterion = ratioCriterion(wearWorkspace(statistics), degrees);
  criterion.squared.set(ratios.map((ratio) => ratio * ratio));
  return { statistics, value: criterion.evaluate(true), criterion };
}

const closeTo = (actual: number, expected: number, scale = Math.abs(expected)) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * (scale + 1e-12));

describe('absorbing runs and units', () => {
  it('equals generalised least squares with the whole covariance matrix, weights included, to 1e-9', () => {
    fc.assert(
      fc.property(arbitraryFleet, arbitraryRatios, (readings, ratios) => {
        const degrees = readings.length - 2;
        const { statistics, value, criterion } = absorbed(readings, ratios, degrees);
        const dense = denseFit(readings, ratios);
        const { solution } = criterion;
        closeTo(statistics.yCentre + solution.beta0, dense.beta[0] as number, 1);
        closeTo(solution.beta1, dense.beta[1] as number, 1);
        closeTo(solution.inverse00, dense.inverse[0]?.[0] as number);
        closeTo(solution.inverse01, dense.inverse[0]?.[1] as number, dense.inverse[0]?.[0] as number);
        closeTo(solution.inverse11, dense.inverse[1]?.[1] as number);
        closeTo(solution.residualSquares, dense.residualSquares, 1e-2);
        // log |V| of the dense model counts the readings' own variances 1 / weight too.
        const direct =
          degrees * Math.log(dense.residualSquares) + dense.logDeterminants + statistics.logWeightSum;
        expect(Math.abs(value - direct)).toBeLessThan(1e-7 * (1 + Math.abs(direct)));
      }),
      { numRuns: 100, seed: 1 },
    );
  });

  it('is what a fresh workspace gives, whichever ratios were absorbed before', () => {
    const two = fc.tuple(arbitraryRatios, arbitraryRatios);
    fc.assert(
      fc.property(
        arbitraryFleet,
        two,
        fc.array(fc.tuple(fc.nat(1), fc.nat(1))),
        (readings, ratios, turns) => {
          const statistics = wearStatistics(readings);
          const used = ratioCriterion(wearWorkspace(statistics), readings.length - 2);
          for (const [ofRuns, ofUnits] of turns) {
            const [runs, units] = [ratios[ofRuns] as Ratios, ratios[ofUnits] as Ratios];
            const asked: Ratios = [runs[0], runs[1], units[2], units[3]];
            used.squared.set(asked.map((ratio) => ratio * ratio));
            expect(used.evaluate(true)).toBe(absorbed(readings, asked, readings.length - 2).value);
          }
        },
      ),
      { numRuns: 60, seed: 2 },
    );
  });

  it('has the derivatives that differences of the criterion show', () => {
    const positive = fc.tuple(...[0, 1, 2, 3].map(() => evenly(0.3, 2)));
    fc.assert(
      fc.property(arbitraryFleet, positive, (readings, drawn) => {
        const ratios = drawn as unknown as Ratios;
        const degrees = readings.length - 2;
        const { criterion } = absorbed(readings, ratios, degrees);
        const gradient = Float64Array.from(criterion.gradient);
        gradient.forEach((derivative, j) => {
          const step = 1e-4;
          const valueAt = (shift: number) => {
            criterion.squared.set(ratios.map((ratio) => ratio * ratio));
            criterion.squared[j] = (criterion.squared[j] as number) + shift;
            return criterion.evaluate(false);
          };
          const difference = (valueAt(step) - valueAt(-step)) / (2 * step);
          expect(Math.abs(derivative - difference)).toBeLessThan(1e-4 * (1 + Math.abs(derivative)));
        });
      }),
      { numRuns: 60, seed: 2 },
    );
  });

  it('stays accurate at large run hours', () => {
    const { readings } = { readings: [0, 1, 2, 3].flatMap((i) => faraway(i)) };
    const ratios: Ratios = [0.7, 0.01, 0.4, 0.02];
    const { criterion } = absorbed(readings, ratios, readings.length - 2);
    const dense = denseFit(readings, ratios);
    expect(criterion.solution.beta1 / (dense.beta[1] as number)).toBeCloseTo(1, 7);
    expect(criterion.solution.residualSquares / dense.residualSquares).toBeCloseTo(1, 7);
  });
});

/** Readings of one unit about 1,000,000 run hours (x = 100). */
function faraway(unit: number): readonly WearReading[] {
  return [0, 1, 2].map((k) => ({
    unit: `U${unit}`,
    run: 'R',
    x: 99 + k + 0.1 * unit,
    y: 8 + 0.08 * k + 0.013 * ((3 * unit + 5 * k) % 7),
  }));
}
