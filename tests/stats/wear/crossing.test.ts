import { describe, expect, it } from 'vitest';
import { crossings } from '../../../lib/stats/wear/crossing';
import { chancePast } from '../../../lib/stats/wear/forecast';
import { oneLine, ownLineMixture } from './ownLineMixture';
import { readReference } from './readFleet';

interface Case {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly L: number;
  readonly level: number;
  readonly new_reading: boolean;
  readonly type: string;
  readonly roots: readonly (number | 'NA')[];
}

/** Source: Fieller limits of inverse prediction by R, see tests/reference/README.md. */
const cases = readReference<{ fieller: Record<string, Case> }>('wear/inverse_prediction.json').fieller;
const FAR = 2000;

describe('crossings of a straight line', () => {
  const lineCases = Object.entries(cases).filter(([, { new_reading }]) => !new_reading);

  it.each(lineCases)(
    '%s: Fieller limits, and none where there is none',
    (_, { x, y, L, level, type, roots }) => {
      const line = ownLineMixture(x, y);
      const tail = (1 - level) / 2;
      const [early, late] = crossings(line, L, 'upper', [tail, 1 - tail], 0, FAR);
      if (type === 'bounded') {
        expect((early as number) / (roots[0] as number)).toBeCloseTo(1, 6);
        expect((late as number) / (roots[1] as number)).toBeCloseTo(1, 6);
      } else {
        // The complement of an interval bounds the early side only; a whole line bounds neither.
        if (type === 'whole line') expect(early).toBe(0);
        else expect((early as number) / (roots[1] as number)).toBeCloseTo(1, 6);
        expect(late).toBeNull();
      }
    },
  );

  it('mirrors for a lower limit', () => {
    const line = { start: 0.2, slope: 0.08, startStart: 1e-4, startSlope: 0, slopeSlope: 1e-4, s2: 1e-4 };
    const rising = oneLine({ ...line, degreesOfFreedom: 12 });
    const falling = oneLine({ ...line, start: -0.2, slope: -0.08, degreesOfFreedom: 12 });
    const chances = [0.1, 0.5, 0.9];
    const upper = crossings(rising, 0.45, 'upper', chances, 0.5, 10);
    const lower = crossings(falling, -0.45, 'lower', chances, 0.5, 10);
    for (const [k, x] of upper.entries()) expect(lower[k]).toBeCloseTo(x as number, 9);
    expect(upper[1]).toBeCloseTo(0.25 / 0.08, 4);
  });
});

describe('crossings where the chance does not simply rise', () => {
  const uncertain = { startStart: 1e-6, startSlope: 0, slopeSlope: 0.0025, s2: 1e-4, degreesOfFreedom: 10 };

  it('gives the first x at which a chance is reached, though it falls again later', () => {
    // The level goes away from the limit, but at first its spread grows faster: the chance rises, then falls.
    const leaving = oneLine({ ...uncertain, start: 0.44, slope: -0.01, slopeSlope: 1e-8, startStart: 1e-4 });
    const at = (x: number) => chancePast(leaving, 0.45, 'upper', x);
    expect(at(0)).toBeGreaterThan(at(3));
    expect(crossings(leaving, 0.45, 'upper', [0.1], 0, 10)).toEqual([0]);
    expect(crossings(leaving, 0.45, 'upper', [0.1], 3, 10)).toEqual([null]);
  });

  it('sees a peak between the points it looks at', () => {
    // Beyond the limit by 0.04 mm all along, best known at x = 7.4: the chance is highest there.
    const [best, least, growth] = [7.4, 0.02, 0.05];
    const peaked = oneLine({
      ...uncertain,
      start: 0.49,
      slope: 0,
      startStart: least ** 2 + (growth * best) ** 2,
      startSlope: -(growth ** 2) * best,
      slopeSlope: growth ** 2,
    });
    const chanceAt = (x: number) => chancePast(peaked, 0.45, 'upper', x);
    const wanted = chanceAt(best) - 0.006;
    const [reached] = crossings(peaked, 0.45, 'upper', [wanted], 0, 10);
    expect(chanceAt(reached as number)).toBeCloseTo(wanted, 4);
    expect(reached).toBeLessThan(best);
  });

  it('gives no late point where the slope may be negative', () => {
    const line = oneLine({ ...uncertain, start: 0.3, slope: 0.03 });
    const [early, median, late] = crossings(line, 0.45, 'upper', [0.1, 0.5, 0.9], 0, 1000);
    expect(early).toBeGreaterThan(0);
    expect(median).toBeCloseTo(5, 3);
    expect(late).toBeNull();
  });

  it('gives the start of the range where the chance is there already, and null beyond its end', () => {
    const line = oneLine({ ...uncertain, start: 0.5, slope: 0.08 });
    expect(crossings(line, 0.45, 'upper', [0.1, 0.5, 0.9], 0.25, 10)).toEqual([0.25, 0.25, 0.25]);
    const slow = oneLine({ ...uncertain, start: 0.2, slope: 0.02, slopeSlope: 1e-6 });
    expect(crossings(slow, 0.45, 'upper', [0.5], 0, 10)).toEqual([null]);
    expect(crossings(slow, 0.45, 'upper', [0.5], 0, 13)[0]).toBeCloseTo(12.5, 3);
    expect(crossings(line, 0.45, 'upper', [], 0, 10)).toEqual([]);
  });

  it('refuses a range that is not one', () => {
    const line = oneLine({ ...uncertain, start: 0.5, slope: 0.08 });
    expect(() => crossings(line, 0.45, 'upper', [0.5], 2, 1)).toThrow('from <= to, got 2 to 1');
    expect(() => crossings(line, 0.45, 'upper', [0.5], 0, Number.POSITIVE_INFINITY)).toThrow('finite range');
  });
});
