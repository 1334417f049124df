import fc from 'fast-check';
import { expect, it } from 'vitest';
import { funnel, funnelLimits } from '../../../lib/stats/sisters/funnel';
import { type OwnEstimate, ownRate, ownStart } from '../../../lib/stats/sisters/ownEstimates';
import type { WearFit, WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { arbitraryFleet } from '../wear/arbitraryFleet';
import * as whole from '../wear/wholeCovariance';

const spreads = { noise: 0.012, startRun: 0.02, slopeRun: 0.015 };

/** Rate and start level as weighted sums of a unit's readings, by least squares with a start for every run. */
function rowsOf(own: readonly WearReading[]) {
  const runs = [...new Set(own.map(({ run }) => run))];
  const weights = own.map(({ weight = 1 }) => weight);
  const design = own.map(({ run, x }) => [...runs.map((name) => Number(name === run)), x]);
  const v = own.map((_, i) => own.map((_, j) => (i === j ? 1 / (weights[i] as number) : 0)));
  const { inverse, vInverse } = whole.denseFit(
    v,
    design,
    own.map(({ y }) => y),
  );
  const solving = whole.product(whole.product(inverse, whole.transposed(design)), vInverse);
  const rate = solving.at(-1) as readonly number[];
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const meanX = own.reduce((sum, { x }, k) => sum + (weights[k] as number) * x, 0) / total;
  return { rate, start: weights.map((weight, k) => weight / total - meanX * (rate[k] as number)) };
}

/** SD of a weighted sum of readings for the unit's start and rate given, from all their covariances. */
function sdOf(row: readonly number[], own: readonly WearReading[]): number {
  const covariance = whole.denseCovariance(own, {
    startRun: spreads.startRun / spreads.noise,
    slopeRun: spreads.slopeRun / spreads.noise,
    startUnit: 0,
    slopeUnit: 0,
  });
  return (
    spreads.noise *
    Math.sqrt(
      whole.dot(
        row,
        covariance.map((line) => whole.dot(line, row)),
      ),
    )
  );
}

it('own rates and start levels, and their SDs, are those of least squares with the whole covariance matrix', () => {
  let compared = 0;
  fc.assert(
    fc.property(arbitraryFleet, (readings) => {
      const statistics = wearStatistics(readings);
      statistics.unitNames.forEach((unit, index) => {
        const own = readings.filter((reading) => reading.unit === unit);
        const rate = ownRate(statistics, index, spreads);
        const spread = statistics.sxxCentred
          .slice(statistics.firstRun[index], statistics.firstRun[index + 1])
          .reduce((sum, squares) => sum + squares, 0);
        // Readings all but at the same hours leave a matrix that cannot be inverted to 6 digits.
        if ('reason' in rate || spread < 0.01) return;
        const rows = rowsOf(own);
        const y = own.map((reading) => reading.y);
        for (const [found, row] of [
          [rate, rows.rate],
          [ownStart(statistics, index, spreads) as OwnEstimate, rows.start],
        ] as const) {
          expect(found.value).toBeCloseTo(whole.dot(row, y), 7);
          expect(found.sd / sdOf(row, own)).toBeCloseTo(1, 6);
          compared++;
        }
      });
    }),
    { seed: 12, numRuns: 60 },
  );
  expect(compared).toBeGreaterThan(100);
});

it('a unit is scored against the spread between units and its own SD together, and limits are 1.96 and 3.09 of these', () => {
  const fit = {
    intercept_mm: 0.2,
    slope_mm_per_10kh: 0.08,
    sdNoise_mm: 0.012,
    sdStartRun_mm: 0.02,
    sdSlopeRun_mm_per_10kh: 0.015,
    sdStartUnit_mm: 0.01,
    sdSlopeUnit_mm_per_10kh: 0.02,
  } as WearFit;
  const slopes = [0.08, 0.16, 0.26];
  const readings = slopes.flatMap((slope, unit) =>
    [0, 1, 2].map((x) => ({ unit: `U${unit}`, run: 'R', x, y: 0.2 + slope * x })),
  );
  const drawn = funnel(wearStatistics([...readings, { unit: 'U3', run: 'R', x: 1, y: 0.3 }]), fit, 'rate');
  // One run with Sxx = 2: variance of its own rate 0.012 squared / 2 + 0.015 squared, and 0.02 squared between units.
  const expected = Math.sqrt(0.012 ** 2 / 2 + 0.015 ** 2 + 0.02 ** 2);
  slopes.forEach((slope, index) => {
    const unit = drawn.units[index];
    if (unit?.reason !== null) throw new Error('a unit with three readings has its own rate');
    expect(unit.score).toBeCloseTo((slope - 0.08) / expected, 10);
    expect(unit.outside).toBe(['none', '95', '99.8'][index]);
  });
  expect(drawn.units[3]?.reason).toContain('2 readings at different run hours');
  const [limits] = funnelLimits(drawn, [Math.sqrt(0.012 ** 2 / 2 + 0.015 ** 2)]);
  expect(limits?.upper95).toBeCloseTo(0.08 + 1.959964 * expected, 7);
  expect(limits?.lower998).toBeCloseTo(0.08 - 3.090232 * expected, 7);
});
