import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import { type ClockReadings, clockPositions } from '../../../lib/stats/clock/clockPositions';
import { type ClockUncertainty, clockUncertainty } from '../../../lib/stats/clock/clockUncertainty';

const positions = ['c12', 'c3', 'c6', 'c9'] as const;
const noise = 0.01;

/** SDs by moving each reading a little: noise x root of the summed squared slopes. */
function byMoving(readings: ClockReadings): Record<keyof ClockUncertainty, number> {
  const little = 1e-6;
  const moved = (position: (typeof positions)[number], by: number) => {
    const value = readings[position];
    const result = value === null ? null : clockPositions({ ...readings, [position]: value + by });
    return result as unknown as Record<keyof ClockUncertainty, number> | null;
  };
  const sdOf = (name: keyof ClockUncertainty) => {
    const slopes = positions.map((position) => {
      const [up, down] = [moved(position, little), moved(position, -little)];
      if (up === null || down === null) return 0;
      const change = up[name] - down[name];
      // Directions go from 12 to 0.
      const turned = name.endsWith('_clock') ? ((change + 18) % 12) - 6 : change;
      return turned / (2 * little);
    });
    return noise * Math.hypot(...slopes);
  };
  const names = [
    'mean_mm',
    'horizontal_mm',
    'vertical_mm',
    'offset_mm',
    'offsetDirection_clock',
    'ovality_mm',
    'smallestGap_mm',
    'smallestGapDirection_clock',
  ] as const;
  return Object.fromEntries(names.map((name) => [name, sdOf(name)])) as ReturnType<typeof byMoving>;
}

test('of four readings: a half of the noise for mean and ovality, its share of root 2 for either offset', () => {
  const sds = clockUncertainty({ c12: 0.9, c3: 0.7, c6: 0.6, c9: 0.75 }, noise);
  expect(sds?.mean_mm).toBeCloseTo(noise / 2, 12);
  expect(sds?.ovality_mm).toBeCloseTo(noise / 2, 12);
  expect(sds?.horizontal_mm).toBeCloseTo(noise / Math.SQRT2, 12);
  expect(sds?.vertical_mm).toBeCloseTo(noise / Math.SQRT2, 12);
  expect(sds?.offset_mm).toBeCloseTo(noise / Math.SQRT2, 12);
});

it('is the noise times the slopes found by moving each reading, with four readings and with three', () => {
  const hundredths = fc.integer({ min: 30, max: 120 }).map((value) => value / 100);
  const missing = fc.constantFrom(null, ...positions);
  let compared = 0;
  fc.assert(
    fc.property(hundredths, hundredths, hundredths, hundredths, missing, (c12, c3, c6, c9, without) => {
      const readings = { c12, c3, c6, c9, ...(without === null ? {} : { [without]: null }) };
      const sds = clockUncertainty(readings, noise);
      const found = clockPositions(readings);
      // Slopes are taken where they hold: away from no offset and from two smallest gaps.
      fc.pre(found !== null && Math.abs(found.vertical_mm) > 0.02 && Math.abs(found.horizontal_mm) > 0.02);
      const moved = byMoving(readings);
      for (const [name, sd] of Object.entries(sds ?? {}) as [keyof ClockUncertainty, number | null][]) {
        if (sd === null) continue;
        expect(Math.abs(sd / moved[name] - 1), `${name} of ${JSON.stringify(readings)}`).toBeLessThan(1e-3);
        compared++;
      }
      expect(sds?.ovality_mm === null).toBe(without !== null);
    }),
    { seed: 11, numRuns: 150 },
  );
  expect(compared).toBeGreaterThan(800);
});

it('is the scatter of 20,000 noisy readings of one circle, the smallest gap within 6 %', () => {
  const truth = { c12: 0.9, c3: 0.74, c6: 0.62, c9: 0.7 };
  const { normal } = seededDraws(5);
  const [gaps, sizes]: [number[], number[]] = [[], []];
  for (let k = 0; k < 20_000; k++) {
    const read = (value: number) => value + noise * normal();
    const { c12, c3, c6, c9 } = truth;
    const found = clockPositions({ c12: read(c12), c3: read(c3), c6: read(c6), c9: read(c9) });
    gaps.push(found?.smallestGap_mm ?? Number.NaN);
    sizes.push(found?.offset_mm ?? Number.NaN);
  }
  const sds = clockUncertainty(truth, noise);
  expect(Math.abs(sdOf(gaps) / (sds?.smallestGap_mm ?? 0) - 1)).toBeLessThan(0.06);
  expect(Math.abs(sdOf(sizes) / (sds?.offset_mm ?? 0) - 1)).toBeLessThan(0.02);
});

it('knows no direction of a circle without offset, nor of one within the noise', () => {
  const flat = clockUncertainty({ c12: 0.8, c3: 0.8, c6: 0.8, c9: 0.8 }, noise);
  expect(flat).toMatchObject({ offset_mm: null, offsetDirection_clock: null, smallestGap_mm: null });
  const slight = clockUncertainty({ c12: 0.801, c3: 0.8, c6: 0.8, c9: 0.8 }, noise);
  expect(slight?.offsetDirection_clock).toBeNull();
  expect(clockUncertainty({ c12: 0.8, c3: null, c6: null, c9: 0.8 }, noise)).toBeNull();
});

function sdOf(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}
