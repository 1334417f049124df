import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCheckSentences, fitChecks } from '../../../lib/stats/wear/fitChecks';
import { fitWear } from '../../../lib/stats/wear/fitWear';
import { chancePast, levelAt, levelQuantile, slopeOf } from '../../../lib/stats/wear/forecast';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { noForecastReason } from '../../../lib/stats/wear/noForecastReason';
import { runLevel } from '../../../lib/stats/wear/runLevel';
import type { WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { coarseReadings } from './coarseReadings';
import { inRunOrder } from './inRunOrder';
import { readFleet } from './readFleet';

/** Runs listed as unit, then [x, y] of every reading. */
function reasonOf(
  runs: readonly (readonly [string, readonly (readonly [number, number])[]])[],
): string | null {
  return noForecastReason(
    wearStatistics(
      runs.flatMap(([unit, points], k) => points.map(([x, y]): WearReading => ({ unit, run: `${k}`, x, y }))),
    ),
  );
}

function finiteNumbers(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (ArrayBuffer.isView(value)) return (value as Float64Array).every((number) => Number.isFinite(number));
  if (typeof value === 'object' && value !== null) return Object.values(value).every(finiteNumbers);
  return true;
}

describe('noForecastReason', () => {
  it.each(['fleet-12', 'fleet-6-noisy', 'fleet-10-no-unit-spread', 'nested-40', 'sleepstudy'])(
    'has none for %s',
    (fleet) => {
      expect(noForecastReason(wearStatistics(readFleet(`wear/${fleet}.csv`)))).toBeNull();
    },
  );

  it('counts the units with 2 readings in a run, and the readings', () => {
    const pair = [
      [0, 0.2],
      [1.1, 0.31],
    ] as const;
    expect(
      reasonOf([
        ['A', pair],
        ['B', [[0, 0.2]]],
        ['B', [[1, 0.3]]],
      ]),
    ).toBe('the wear rate needs at least 2 units with 2 readings in a run, the group has 1');
    expect(
      reasonOf([
        ['A', pair],
        ['B', pair],
        ['C', pair],
      ]),
    ).toBe('the wear rate needs at least 7 readings, the group has 6');
  });

  it('says what would settle single readings at the same two run hours', () => {
    const run = (start: number, end: number) =>
      [
        [0, start],
        [1.2, end],
      ] as const;
    const same = [
      ['A', run(0.2, 0.31)],
      ['A', run(0.22, 0.3)],
      ['B', run(0.19, 0.33)],
      ['C', run(0.21, 0.28)],
      ['D', [[1.2, 0.3]]],
    ] as const;
    expect(reasonOf(same)).toBe(
      'the 5 runs of the group have single readings at the same two run hours, 0 h and 12,000 h, so that gauge noise and ' +
        'differences between units cannot be told apart: one repeated reading of the same state, or one reading at ' +
        'other run hours, would settle it',
    );
    expect(reasonOf([...same, ['E', [[0.8, 0.29]]]])).toBeNull();
    expect(
      reasonOf([
        ...same,
        [
          'E',
          [
            [1.2, 0.29],
            [1.2, 0.3],
          ],
        ],
      ]),
    ).toBeNull();
  });

  it('needs 2 different run hours', () => {
    const points = [
      [1.2, 0.3],
      [1.2, 0.31],
    ] as const;
    expect(reasonOf(['A', 'B', 'C', 'D'].map((unit) => [unit, points]))).toBe(
      'the wear rate needs readings at 2 or more run hours, all 8 readings of the group are at 12,000 h',
    );
  });

  it('names readings without scatter: all equal, on one line, or every unit or run on its own', () => {
    const fleet = (level: (unit: number, x: number) => number) =>
      reasonOf(
        [0, 1, 2, 3, 4].map((unit) => [
          `U${unit}`,
          [0, 0.9 + 0.1 * unit, 2.2].map((x) => [x, level(unit, x)]),
        ]),
      );
    const ending =
      'so that the gauge noise cannot be estimated: record the readings as measured, with one more digit';
    expect(fleet(() => 0.3)).toBe(`all 15 readings of the group are equal, ${ending}`);
    expect(fleet((_, x) => 0.2 + 0.07 * x)).toBe(
      `all 15 readings of the group lie on one straight line, ${ending}`,
    );
    const units = `all 15 readings of the group lie exactly on the straight lines of their 5 units, ${ending}`;
    expect(fleet((unit, x) => 0.2 + 0.03 * unit * unit + 0.07 * x)).toBe(units);
    expect(fleet((unit, x) => (0.05 + 0.02 * unit * unit) * x)).toBe(units);
    const runs = [0, 1, 2, 3, 4, 5].map(
      (k) => [`U${k % 3}`, [0, 1 + 0.1 * k].map((x) => [x, 0.2 + 0.02 * k * k])] as const,
    );
    expect(reasonOf(runs as never)).toBe(
      `all 12 readings of the group lie exactly on the straight lines of their 6 runs, ${ending}`,
    );
  });

  it('refuses numbers whose squares leave the range, and only throws where the sums already did', () => {
    const huge = (size: number) =>
      reasonOf(
        [0, 1, 2, 3].map((k) => [
          `U${k}`,
          [
            [0, size * (1 + k)],
            [1 + k, 2 * size],
          ],
        ]),
      );
    expect(huge(1e40)).toMatch(/^some of the 8 readings or their run hours are too large/);
    expect(huge(1e10)).toBeNull();
    expect(() => huge(1e200)).toThrow('finite');
  });

  it('lets nothing through from which a number that is not finite comes', () => {
    const seen = { forecast: 0, refused: 0 };
    fc.assert(
      fc.property(coarseReadings, fc.constantFrom(1, 1e-12, 1e12), (coarse, unit) => {
        const readings = coarse.map((reading) => ({ ...reading, y: unit * reading.y }));
        const statistics = wearStatistics(readings);
        const reason = noForecastReason(statistics);
        if (reason !== null) {
          seen.refused += 1;
          return /\d/.test(reason) && !/NaN|Infinity|undefined|null/.test(reason);
        }
        seen.forecast += 1;
        const fit = fitWear(statistics);
        const posterior = integrateWear(statistics);
        expect(finiteNumbers(fit)).toBe(true);
        expect(finiteNumbers(posterior)).toBe(true);
        for (const [unit, run] of [
          [null, null],
          [0, null],
          [0, 0],
        ] as const) {
          const line = runLevel(posterior, statistics, unit, run);
          const numbers = [
            levelAt(line, 3),
            slopeOf(line),
            chancePast(line, 0.5, 'upper', 3),
            levelQuantile(line, 3, 0.9),
          ];
          expect(finiteNumbers(numbers)).toBe(true);
        }
        const checks = fitChecks(statistics, fit, posterior, inRunOrder(statistics, readings));
        expect(finiteNumbers(checks)).toBe(true);
        return fitCheckSentences(checks).every((sentence) => !/NaN|Infinity|∞|undefined|null/.test(sentence));
      }),
      { seed: 22, numRuns: 200 },
    );
    expect(Math.min(seen.forecast, seen.refused)).toBeGreaterThan(30);
  });
});
