import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactLines } from '../../../lib/stats/wear/exactLines';
import type { WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { coarseReadings } from './coarseReadings';
import { leastSquares } from './wholeCovariance';

const keys = {
  group: () => '',
  unit: (reading: WearReading) => reading.unit,
  run: (reading: WearReading) => `${reading.unit} ${reading.run}`,
};

/** The same question, answered with every column of the design written out. */
function exactByColumns(readings: readonly WearReading[]) {
  const y = readings.map((reading) => reading.y);
  const mean = y.reduce((sum, value) => sum + value / y.length, 0);
  for (const start of ['group', 'unit', 'run'] as const) {
    for (const rate of ['group', 'unit', 'run'] as const) {
      const starts = [...new Set(readings.map(keys[start]))].map((key) =>
        readings.map((reading) => (keys[start](reading) === key ? 1 : 0)),
      );
      const rates = [...new Set(readings.map(keys[rate]))].map((key) =>
        readings.map((reading) => (keys[rate](reading) === key ? reading.x : 0)),
      );
      const { rank, squares } = leastSquares(
        [...starts, ...rates],
        y.map((value) => value - mean),
      );
      const differing = Number(start !== 'group') + Number(rate !== 'group');
      if (readings.length - rank >= 2 + differing && squares < 1e-12) return { start, rate };
    }
  }
  return null;
}

describe('exactLines', () => {
  it('agrees with least squares on written-out columns for coarse readings', () => {
    const found = { exact: 0, none: 0 };
    fc.assert(
      fc.property(coarseReadings, (readings) => {
        const expected = exactByColumns(readings);
        expect(exactLines(wearStatistics(readings))).toEqual(expected);
        if (expected) found.exact += 1;
        else found.none += 1;
      }),
      { seed: 21, numRuns: 400 },
    );
    expect(Math.min(found.exact, found.none)).toBeGreaterThan(40);
  });

  it('is not misled by rounding far from zero, nor by a hundredth of a millimetre of scatter', () => {
    const readings = Array.from({ length: 12 }, (_, k) => ({
      unit: `U${k % 4}`,
      run: `${k % 4}`,
      x: 0.37 * k,
      y: 812.3 + (k % 4) * 0.1 + 0.37 * k * 0.0813,
    }));
    expect(exactLines(wearStatistics(readings))).toEqual({ start: 'unit', rate: 'group' });
    const scattered = readings.map((reading, k) => (k === 5 ? { ...reading, y: reading.y + 0.01 } : reading));
    expect(exactLines(wearStatistics(scattered))).toBeNull();
  });
});
