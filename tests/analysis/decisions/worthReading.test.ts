import { describe, expect, it } from 'vitest';
import { worthReading } from '../../../lib/analysis/decisions/worthReading';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import { studentTable } from '../../../lib/stats/wear/studentTable';
import type { LineMixture } from '../../../lib/stats/wear/types';

/** One normal line: start and slope independent with the given standard deviations; a reading has noise 0.01 mm. */
function line(start: number, sdStart: number, slope: number, sdSlope: number): LineMixture {
  const one = (value: number) => Float64Array.of(value);
  return {
    weight: one(1),
    start: one(start),
    slope: one(slope),
    startStart: one(sdStart ** 2),
    startSlope: one(0),
    slopeSlope: one(sdSlope ** 2),
    s2: one(0.0001),
    table: studentTable(1e6),
  };
}

/** Share of readings at xNow that would turn the decision at xThen, by drawing lines and readings and conditioning on each. */
function turned(sdStart: number, sdSlope: number, limit: number, xNow: number, xThen: number): number {
  const { normal } = seededDraws(1);
  const quantile = 1.281552;
  const [mean, count] = [(x: number) => 0.2 + 0.1 * x, 20_000];
  const covariance = (x: number, other: number) => sdStart ** 2 + x * other * sdSlope ** 2;
  const before = mean(xThen) + quantile * Math.sqrt(covariance(xThen, xThen)) > limit;
  const gain = covariance(xThen, xNow) / (covariance(xNow, xNow) + 0.0001);
  const left = Math.sqrt(covariance(xThen, xThen) - gain * covariance(xNow, xThen));
  let turns = 0;
  for (let k = 0; k < count; k++) {
    const y = 0.2 + sdStart * normal() + (0.1 + sdSlope * normal()) * xNow + 0.01 * normal();
    const after = mean(xThen) + gain * (y - mean(xNow)) + quantile * left > limit;
    if (after !== before) turns += 1;
  }
  return turns / count;
}

describe('worthReading', () => {
  it('when the doubt is of the level and the reading may turn the decision; not when it is of a rate yet to show, or the case is clear', () => {
    const level = line(0.2, 0.05, 0.1, 0.002);
    const rate = line(0.2, 0.005, 0.1, 0.05);
    expect(worthReading(level, 0.38, 1, 0.5, 1.5, 0.1)).toBe(true);
    // 500 run hours after the start a reading tells nothing of the rate.
    expect(worthReading(rate, 0.38, 1, 0.05, 1.5, 0.1)).toBe(false);
    expect(worthReading(level, 0.6, 1, 0.5, 1.5, 0.1)).toBe(false);
    expect(worthReading(level, 0.25, 1, 0.5, 1.5, 0.1)).toBe(false);
  });

  it('turns at a chance of 20 % as simulated readings do', () => {
    const level = line(0.2, 0.05, 0.1, 0.002);
    let [worth, not] = [0, 0];
    for (let limit = 0.25; limit < 0.6; limit += 0.005) {
      const share = turned(0.05, 0.002, limit, 0.5, 1.5);
      if (Math.abs(share - 0.2) < 0.015) continue;
      const expected = share > 0.2;
      expect(worthReading(level, limit, 1, 0.5, 1.5, 0.1), `${limit}`).toBe(expected);
      if (expected) worth += 1;
      else not += 1;
    }
    expect(worth).toBeGreaterThan(5);
    expect(not).toBeGreaterThan(20);
  });

  it('mirrors for a lower limit', () => {
    const falling = line(-0.2, 0.05, -0.1, 0.002);
    for (const limit of [0.25, 0.35, 0.38, 0.42, 0.6]) {
      expect(worthReading(falling, -limit, -1, 0.5, 1.5, 0.1)).toBe(
        worthReading(line(0.2, 0.05, 0.1, 0.002), limit, 1, 0.5, 1.5, 0.1),
      );
    }
  });
});
