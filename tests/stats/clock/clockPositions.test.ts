import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ClockReadings, clockPositions } from '../../../lib/stats/clock/clockPositions';
import reference from '../../reference/small/fourPosition.json';

const cases = ['concentric', 'pure_ecc_0', 'pure_ecc_45', 'pure_oval', 'mixed', 'mixed2'] as const;

function readingsAt([c12 = 0, c3 = 0, c6 = 0, c9 = 0]: readonly number[]): ClockReadings {
  return { c12, c3, c6, c9 };
}

/** Smallest gap by trying angles, each 0.01 degrees apart. */
function smallestByTrying(m: number, v: number, h: number, o: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < 36_000; k++) {
    const p = (k * Math.PI) / 18_000;
    least = Math.min(least, m + v * Math.cos(p) + h * Math.sin(p) + o * Math.cos(2 * p));
  }
  return least;
}

describe('clockPositions', () => {
  it.each(cases)('meets the reference decomposition of %s to 1e-12', (name) => {
    const { c, mean, e_cos, e_sin, ecc, ovality_cos2, reconstructed_min } = reference[name];
    const result = clockPositions(readingsAt(c));
    expect(result?.mean_mm).toBeCloseTo(mean, 12);
    expect(result?.vertical_mm).toBeCloseTo(e_cos, 12);
    expect(result?.horizontal_mm).toBeCloseTo(e_sin, 12);
    expect(result?.offset_mm).toBeCloseTo(ecc, 12);
    expect(result?.ovality_mm).toBeCloseTo(ovality_cos2, 12);
    expect(result?.ovalityAssumedZero).toBe(false);
    expect(result?.smallestGap_mm).toBeCloseTo(reconstructed_min, 8);
  });

  it('names the direction of the smallest gap as on a clock face', () => {
    const direction = (c: readonly number[]) => {
      const result = clockPositions(readingsAt(c));
      return [result?.offsetDirection_clock, result?.smallestGapDirection_clock];
    };
    expect(direction([1, 0.8, 0.6, 0.8])).toEqual([6, 6]);
    expect(direction([0.6, 0.8, 1, 0.8])).toEqual([12, 12]);
    expect(direction([0.8, 0.6, 0.8, 1])).toEqual([3, 3]);
    expect(direction([0.8, 1, 0.8, 0.6])).toEqual([9, 9]);
    const [offset, gap] = direction(reference.mixed2.c);
    expect(offset).toBeCloseTo((reference.mixed2.ecc_angle_deg_of_max - 180) / 30, 9);
    expect(gap).toBeCloseTo(reference.mixed2.reconstructed_min_deg / 30, 3);
  });

  it('names no direction where there is none or more than one', () => {
    expect(clockPositions(readingsAt([0.8, 0.8, 0.8, 0.8]))).toMatchObject({
      offsetDirection_clock: null,
      smallestGapDirection_clock: null,
      smallestGap_mm: 0.8,
    });
    expect(clockPositions(readingsAt(reference.pure_oval.c))?.smallestGapDirection_clock).toBeNull();
    // Strong ovality, offset straight down: the smallest gap lies on both sides alike.
    const both = clockPositions(readingsAt([1.02, 0.7, 0.98, 0.7]));
    expect(both).toMatchObject({ offsetDirection_clock: 6, smallestGapDirection_clock: null });
    expect(both?.smallestGap_mm).toBeLessThan(0.7);
  });

  it('takes a missing fourth position from the other three, without ovality, and says so', () => {
    const { c0, c180, c270, m, ec, es } = reference.missing_one.example;
    const result = clockPositions({ c12: c0, c3: null, c6: c180, c9: c270 });
    expect(result?.mean_mm).toBeCloseTo(m, 12);
    expect(result?.vertical_mm).toBeCloseTo(ec, 12);
    expect(result?.horizontal_mm).toBeCloseTo(es, 12);
    expect(result).toMatchObject({ ovality_mm: 0, ovalityAssumedZero: true });
    const whole = clockPositions(readingsAt([0.95, 0.72, 0.61, 0.84]));
    for (const missing of ['c12', 'c3', 'c6', 'c9'] as const) {
      const three = clockPositions({ ...readingsAt([0.95, 0.72, 0.61, 0.84]), [missing]: null });
      expect(three?.mean_mm).toBeCloseTo(whole?.mean_mm as number, 12);
      expect(three?.smallestGap_mm).toBeCloseTo(whole?.smallestGap_mm as number, 12);
    }
  });

  it('is null under three positions', () => {
    expect(clockPositions({ c12: 0.8, c3: null, c6: 0.7, c9: null })).toBeNull();
    expect(clockPositions({ c12: null, c3: null, c6: 0.7, c9: 0.8 })).toBeNull();
    expect(clockPositions({ c12: null, c3: null, c6: null, c9: null })).toBeNull();
  });

  it('finds the smallest gap that trying 36,000 angles finds, and never one above a reading', () => {
    const reading = fc.integer({ min: 0, max: 200 }).map((value) => value / 100);
    fc.assert(
      fc.property(reading, reading, reading, reading, (c12, c3, c6, c9) => {
        const result = clockPositions({ c12, c3, c6, c9 });
        if (result === null) return false;
        const { mean_mm, vertical_mm, horizontal_mm, ovality_mm, smallestGap_mm } = result;
        const tried = smallestByTrying(mean_mm, vertical_mm, horizontal_mm, ovality_mm);
        expect(smallestGap_mm).toBeLessThanOrEqual(tried + 1e-12);
        expect(smallestGap_mm).toBeGreaterThan(tried - 1e-7);
        expect(smallestGap_mm).toBeLessThanOrEqual(Math.min(c12, c3, c6, c9));
        if (result.smallestGapDirection_clock !== null) {
          const p = (result.smallestGapDirection_clock * Math.PI) / 6;
          const there =
            mean_mm + vertical_mm * Math.cos(p) + horizontal_mm * Math.sin(p) + ovality_mm * Math.cos(2 * p);
          expect(there).toBeCloseTo(smallestGap_mm, 10);
        }
        return true;
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('turns with the readings: a quarter turn moves every direction by three hours', () => {
    const reading = fc.double({ min: 0, max: 2, noNaN: true });
    fc.assert(
      fc.property(reading, reading, reading, reading, (c12, c3, c6, c9) => {
        const one = clockPositions({ c12, c3, c6, c9 });
        const turned = clockPositions({ c12: c9, c3: c12, c6: c3, c9: c6 });
        expect(turned?.offset_mm).toBeCloseTo(one?.offset_mm as number, 12);
        expect(turned?.ovality_mm).toBeCloseTo(-(one?.ovality_mm as number), 12);
        expect(turned?.smallestGap_mm).toBeCloseTo(one?.smallestGap_mm as number, 12);
        const [before, after] = [one?.offsetDirection_clock, turned?.offsetDirection_clock];
        if (before === null || before === undefined) return after === null;
        const turn = ((after as number) - before + 12) % 12;
        return (one?.offset_mm as number) < 1e-9 || Math.abs(turn - 3) < 1e-5;
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  it('never gives a number that is not finite', () => {
    const value = fc.option(fc.double({ noNaN: true, noDefaultInfinity: true }), { freq: 8 });
    fc.assert(
      fc.property(value, value, value, value, (c12, c3, c6, c9) => {
        const result = clockPositions({ c12, c3, c6, c9 });
        if (result === null) return true;
        return Object.values(result).every((part) => typeof part !== 'number' || Number.isFinite(part));
      }),
      { seed: 9, numRuns: 1000 },
    );
  });
});
