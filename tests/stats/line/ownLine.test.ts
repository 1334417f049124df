import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineInterval, type OwnLine, ownLine } from '../../../lib/stats/line/ownLine';
import reference from '../../reference/regression/regression.json';

function fitted(x: ArrayLike<number>, y: ArrayLike<number>): OwnLine {
  const line = ownLine(x, y);
  if ('reason' in line) throw new Error(line.reason);
  return line;
}

function expectClose(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.max(Math.abs(expected), 1e-300));
}

describe('ownLine', () => {
  it('meets the certified values of NIST StRD Norris to 1e-12', () => {
    const { x, y, certified } = reference.norris;
    const line = fitted(x, y);
    expectClose(line.slope, certified.b1, 1e-12);
    expectClose(line.intercept, certified.b0, 1e-11);
    expectClose(line.slopeSe, certified.se_b1, 1e-12);
    expectClose(line.interceptSe, certified.se_b0, 1e-12);
    expectClose(line.residualSd, certified.residual_sd, 1e-12);
    expect(line).toMatchObject({ degreesOfFreedom: certified.df, readings: 36, distinctX: 35 });
  });

  it.each(['montgomery_oxygen', 'cars_R'] as const)('meets R lm on %s to 1e-11', (name) => {
    const { x, y, R } = reference[name];
    const line = fitted(x, y);
    expectClose(line.slope, R.coef.b1, 1e-11);
    expectClose(line.intercept, R.coef.b0, 1e-11);
    expectClose(line.slopeSe, R.se.b1, 1e-11);
    expectClose(line.interceptSe, R.se.b0, 1e-11);
    expectClose(line.residualSd, R.residual_sd, 1e-11);
    expect(line.degreesOfFreedom).toBe(R.df);
  });

  it('keeps the slope when x is a date in milliseconds or hours of a million', () => {
    const { x, y, certified } = reference.norris;
    for (const [origin, unit] of [
      [1.7e12, 1000],
      [1e6, 1],
    ] as const) {
      const line = fitted(
        x.map((value) => origin + Math.round(unit * 10 * value)),
        y,
      );
      expectClose(line.slope * unit * 10, certified.b1, 1e-11);
      expectClose(line.slopeSe * unit * 10, certified.se_b1, 1e-11);
    }
  });

  it('gives a perfect fit finite numbers with residual SD 0', () => {
    const line = fitted(reference.noint1.x, reference.noint1.y);
    expect(line).toMatchObject({ slope: 1, intercept: 70, residualSd: 0, slopeSe: 0, interceptSe: 0 });
    expect(lineInterval(line, 100, 0.8, 'prediction')).toEqual({ fit: 170, lower: 170, upper: 170 });
    expect(fitted([0, 1, 2], [0.3, 0.3, 0.3])).toMatchObject({ slope: 0, residualSd: 0 });
  });

  it('refuses below 3 readings or 2 distinct x, with counts', () => {
    expect(ownLine([1, 2], [0.2, 0.3])).toEqual({
      reason: 'a straight line needs at least 3 readings in the run, got 2',
    });
    expect(ownLine([1, 1, 1, 1], [1, 2, 3, 4])).toEqual({
      reason: 'a straight line needs readings at 2 or more run hours, got 4 at the same',
    });
    expect(() => ownLine([1, 2, 3], [1, 2])).toThrow('got 3 and 2');
    expect(() => ownLine([1, 2, Number.NaN], [1, 2, 3])).toThrow('finite');
  });

  it('has residuals orthogonal to 1 and x, and moves with x and y', () => {
    const value = fc.double({ min: -1000, max: 1000, noNaN: true, noDefaultInfinity: true });
    const pairs = fc.array(fc.tuple(fc.integer({ min: 0, max: 50 }), value), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(pairs, value, (points, shift) => {
        const [x, y] = [points.map(([px]) => px), points.map(([, py]) => py)];
        const line = ownLine(x, y);
        if ('reason' in line) return new Set(x).size < 2;
        const residuals = y.map((v, k) => v - line.intercept - line.slope * (x[k] as number));
        expect(Math.abs(residuals.reduce((sum, r) => sum + r, 0))).toBeLessThan(1e-8);
        expect(
          Math.abs(residuals.reduce((sum, r, k) => sum + r * ((x[k] as number) - line.meanX), 0)),
        ).toBeLessThan(1e-7);
        const moved = fitted(
          x.map((v) => v + 1e5),
          y.map((v) => v + shift),
        );
        expect(Math.abs(moved.slope - line.slope)).toBeLessThan(1e-9 * (1 + Math.abs(line.slope)));
        expect(Math.abs(moved.residualSd - line.residualSd)).toBeLessThan(1e-8);
        return true;
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('never gives a number that is not finite', () => {
    const value = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(value, value), { maxLength: 6 }), (points) => {
        const line = ownLine(
          points.map(([x]) => x),
          points.map(([, y]) => y),
        );
        return 'reason' in line ? /\d/.test(line.reason) : Object.values(line).every(Number.isFinite);
      }),
      { seed: 2, numRuns: 1000 },
    );
  });
});

describe('lineInterval', () => {
  it.each(['norris', 'montgomery_oxygen', 'cars_R'] as const)('meets R predict on %s to 1e-9', (name) => {
    const { x, y, R } = reference[name];
    const line = fitted(x, y);
    for (const row of R.predict) {
      for (const [level, prediction, confidence] of [
        [0.8, row.pi80, row.ci80],
        [0.9, row.pi90, row.ci90],
        [0.95, row.pi95, row.ci95],
      ] as const) {
        const [own, mean] = (['prediction', 'confidence'] as const).map((kind) =>
          lineInterval(line, row.x0, level, kind),
        );
        expectClose(own?.fit as number, row.fit, 1e-10);
        expectClose(own?.lower as number, prediction[0] as number, 1e-9);
        expectClose(own?.upper as number, prediction[1] as number, 1e-9);
        expectClose(mean?.lower as number, confidence[0] as number, 1e-9);
        expectClose(mean?.upper as number, confidence[1] as number, 1e-9);
      }
    }
  });

  it('meets the published 95 % prediction interval of the oxygen purity data', () => {
    const { x, y, published } = reference.montgomery_oxygen;
    const { lower, upper } = lineInterval(fitted(x, y), published.at_x0, 0.95, 'prediction');
    expect(lower).toBeCloseTo(published.pi95[0] as number, 2);
    expect(upper).toBeCloseTo(published.pi95[1] as number, 2);
  });

  it('is narrowest at the mean of x, wider for a higher level, and widest for a reading', () => {
    const x = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 4, maxLength: 8 });
    const noise = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(x, noise, fc.integer({ min: -500, max: 500 }), (hours, e, at) => {
        const line = ownLine(
          hours,
          hours.map((h, k) => 0.1 * h + (e[k] as number) + k * k),
        );
        if ('reason' in line || line.residualSd < 1e-9) return true;
        const width = (level: number, kind: 'prediction' | 'confidence', where = at) => {
          const { lower, upper } = lineInterval(line, where, level, kind);
          return upper - lower;
        };
        expect(width(0.8, 'confidence')).toBeGreaterThanOrEqual(width(0.8, 'confidence', line.meanX));
        expect(width(0.9, 'prediction')).toBeGreaterThan(width(0.8, 'prediction'));
        expect(width(0.8, 'prediction')).toBeGreaterThan(width(0.8, 'confidence'));
        return true;
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('refuses levels outside 0 to 1 and x out of range', () => {
    const line = fitted([0, 1, 2, 3], [0, 2, 1, 4]);
    for (const level of [0, 1, -0.1, Number.NaN]) {
      expect(() => lineInterval(line, 1, level, 'prediction')).toThrow('between 0 and 1');
    }
    expect(() => lineInterval(line, Number.MAX_VALUE, 0.8, 'prediction')).toThrow('range of numbers');
  });
});
