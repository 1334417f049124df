import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { crossings } from '../../../lib/stats/wear/crossing';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import { chancePast, levelAt, readingQuantile, slopeOf } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import type { WearFit, WearReading } from '../../../lib/stats/wear/types';
import { unitRate } from '../../../lib/stats/wear/unitRate';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { arbitraryFleet } from './arbitraryFleet';
import { evenly } from './evenly';

const fitOf = (readings: readonly WearReading[]) => fitWear(wearStatistics(readings));
const SPREADS = [
  'sdNoise_mm',
  'sdStartRun_mm',
  'sdSlopeRun_mm_per_10kh',
  'sdStartUnit_mm',
  'sdSlopeUnit_mm_per_10kh',
] as const;

/** Fleets drawn from the model, of varied size and spread: their likelihood has one clear maximum. */
const arbitraryModelFleet = fc
  .tuple(fc.integer({ min: 1, max: 10_000 }), fc.integer({ min: 6, max: 15 }), evenly(0.005, 0.03))
  .map(([seed, units, noise]) => {
    const truth = { noise, startRun: 0.015, slopeRun: 0.02, startUnit: 0.02, slopeUnit: 0.02 };
    return simulateFleet(seed, units, truth, false).readings;
  });

/** Spreads near zero are told apart only by the square root of rounding. */
function expectSameSpreads(actual: WearFit, expected: WearFit, factor: (name: string) => number) {
  for (const name of SPREADS) {
    const [one, other] = [actual[name], expected[name] * factor(name)];
    expect(Math.abs(one - other)).toBeLessThan(1e-5 * other + 1e-3 * factor(name) * expected.sdNoise_mm);
  }
}

describe('fit and posterior follow the readings', () => {
  it('a constant added to every reading shifts the intercept only', () => {
    fc.assert(
      fc.property(arbitraryModelFleet, evenly(-2, 2), (readings, shift) => {
        const moved = readings.map((reading) => ({ ...reading, y: reading.y + shift }));
        const [fit, fitMoved] = [fitOf(readings), fitOf(moved)];
        expect(fitMoved.intercept_mm - fit.intercept_mm).toBeCloseTo(shift, 6);
        expect(fitMoved.slope_mm_per_10kh).toBeCloseTo(fit.slope_mm_per_10kh, 6);
        expect(fitMoved.remlCriterion).toBeCloseTo(fit.remlCriterion, 6);
        expectSameSpreads(fitMoved, fit, () => 1);
        const level = (fleet: readonly WearReading[]) => {
          const statistics = wearStatistics(fleet);
          return levelAt(runLevel(integrateWear(statistics), statistics, 0, 0), 2);
        };
        const [one, other] = [level(readings), level(moved)];
        expect(other.mean - one.mean).toBeCloseTo(shift, 6);
        expect(other.sd / one.sd).toBeCloseTo(1, 5);
      }),
      { numRuns: 40, seed: 9 },
    );
  });

  it('scaled readings scale every length, scaled hours every slope', () => {
    fc.assert(
      fc.property(arbitraryModelFleet, evenly(0.1, 30), evenly(0.2, 5), (readings, scaleY, scaleX) => {
        const fit = fitOf(readings);
        const stretched = fitOf(readings.map((reading) => ({ ...reading, y: reading.y * scaleY })));
        expect(stretched.slope_mm_per_10kh / (fit.slope_mm_per_10kh * scaleY)).toBeCloseTo(1, 6);
        expect(stretched.interceptSe_mm / (fit.interceptSe_mm * scaleY)).toBeCloseTo(1, 4);
        expectSameSpreads(stretched, fit, () => scaleY);
        const slowed = fitOf(readings.map((reading) => ({ ...reading, x: reading.x * scaleX })));
        expect((slowed.slope_mm_per_10kh * scaleX) / fit.slope_mm_per_10kh).toBeCloseTo(1, 6);
        expect(slowed.sdNoise_mm / fit.sdNoise_mm).toBeCloseTo(1, 4);
        expectSameSpreads(slowed, fit, (name) => (name.includes('Slope') ? 1 / scaleX : 1));
      }),
      { numRuns: 25, seed: 10 },
    );
  });

  it('the order of units and of readings is irrelevant', () => {
    const shuffled = arbitraryModelFleet.chain((readings) =>
      fc.tuple(fc.constant(readings), fc.shuffledSubarray([...readings], { minLength: readings.length })),
    );
    fc.assert(
      fc.property(shuffled, ([readings, mixed]) => {
        const [fit, fitMixed] = [fitOf(readings), fitOf(mixed)];
        expect(fitMixed.remlCriterion).toBeCloseTo(fit.remlCriterion, 6);
        expectSameSpreads(fitMixed, fit, () => 1);
        const chance = (fleet: readonly WearReading[]) => {
          const statistics = wearStatistics(fleet);
          const unit = statistics.unitNames.indexOf('U2');
          const first = statistics.firstRun[unit] as number;
          const run = statistics.runNames.indexOf('U2-1', first);
          return chancePast(runLevel(integrateWear(statistics), statistics, unit, run), 0.45, 'upper', 3);
        };
        expect(chance(mixed)).toBeCloseTo(chance(readings), 5);
      }),
      { numRuns: 40, seed: 11 },
    );
  });
});

describe('whatever the readings, every number is finite or the refusal says what was needed', () => {
  /** Ties, equal readings, readings on exact lines, one unit, one reading a run, huge hours. */
  const awkward = fc.oneof(
    fc
      .array(
        fc.record({
          unit: fc.constantFrom('A', 'B', 'C'),
          run: fc.constantFrom('1', '2'),
          x: fc.oneof(fc.constantFrom(0, 1, 2), fc.constantFrom(0, 99.5, 100), evenly(0, 100)),
          y: fc.oneof(fc.constantFrom(0.2, 0.3), fc.integer({ min: -3, max: 9 }), evenly(-1e3, 1e3)),
        }),
        { minLength: 3, maxLength: 24 },
      )
      .filter((readings) => readings.length > 0),
    fc.constantFrom(0, 0.01, 1e-9, 1e-14).chain((departure) =>
      fc
        .array(
          fc.tuple(
            fc.integer({ min: 0, max: 3 }),
            fc.integer({ min: 0, max: 3 }),
            fc.integer({ min: -1, max: 1 }),
          ),
          {
            minLength: 7,
            maxLength: 24,
          },
        )
        .map((cells) =>
          cells.map(([unit, x, sign]) => ({
            unit: `U${unit}`,
            run: '1',
            x,
            y: 0.2 + 0.1 * unit + 0.08 * x + sign * departure,
          })),
        ),
    ),
    arbitraryFleet,
  );

  it('fits, integrates and forecasts', () => {
    let answered = 0;
    fc.assert(
      fc.property(awkward, (readings) => {
        const statistics = wearStatistics(readings);
        const fit = orRefusal(() => fitWear(statistics));
        if (fit) expectFinite(Object.values({ ...fit, ...fit.ratios }));
        const posterior = orRefusal(() => integrateWear(statistics));
        if (!posterior) return;
        answered += 1;
        for (const field of Object.values(posterior))
          if (field instanceof Float64Array) expectFinite([...field]);
        for (const [unit, run] of [
          [0, 0],
          [0, null],
          [null, null],
        ] as const) {
          const line = runLevel(posterior, statistics, unit, run);
          const rate = unitRate(posterior, statistics, unit);
          const chances = [0, 1, 50].map((x) => chancePast(line, 0.45, 'upper', x));
          const levels = [levelAt(line, 0), levelAt(line, 100), slopeOf(line), levelAt(rate, 0)];
          expectFinite([...chances, ...levels.flatMap(({ mean, sd }) => [mean, sd])]);
          expectFinite([0.1, 0.5, 0.9].map((p) => readingQuantile(line, 2, p)));
          expectFinite(crossings(line, 0.45, 'upper', [0.1, 0.5, 0.9], 0, 10));
        }
      }),
      { numRuns: 150, seed: 12 },
    );
    expect(answered).toBeGreaterThan(40);
  });
});

function expectFinite(values: readonly unknown[]) {
  for (const value of values) if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
}

/** The result, or undefined if it was refused with a reason. */
function orRefusal<T>(compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    expect(String(error)).toMatch(/requires .*, got /);
    return undefined;
  }
}
