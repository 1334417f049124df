import fc from 'fast-check';
import type { WearReading } from '../../../lib/stats/wear/types';
import { evenly } from './evenly';

/** Small fleets of 2 to 4 units with 1 to 3 runs of 1 to 4 readings each; some readings weigh less than 1. */
export const arbitraryFleet: fc.Arbitrary<readonly WearReading[]> = fc
  .array(
    fc.array(
      fc.array(fc.tuple(evenly(0, 3), evenly(-0.05, 0.05), fc.constantFrom(1, 1, 0.3)), {
        minLength: 1,
        maxLength: 4,
      }),
      { minLength: 1, maxLength: 3 },
    ),
    { minLength: 2, maxLength: 4 },
  )
  .map((units) =>
    units.flatMap((runs, i) =>
      runs.flatMap((readings, j) =>
        readings.map(([x, departure, weight]) => ({
          unit: `U${i}`,
          run: `R${j}`,
          x,
          y: 0.2 + 0.08 * x + departure,
          weight,
        })),
      ),
    ),
  )
  .filter(isUsable);

/** At least 8 readings whose run hours spread and which scatter about their common line by 0.005 mm or more. */
function isUsable(readings: readonly WearReading[]): boolean {
  const meanOf = (value: (reading: WearReading) => number) =>
    readings.reduce((sum, reading) => sum + value(reading), 0) / readings.length;
  const [meanX, meanY] = [meanOf(({ x }) => x), meanOf(({ y }) => y)];
  const xx = meanOf(({ x }) => (x - meanX) ** 2);
  const xy = meanOf(({ x, y }) => (x - meanX) * (y - meanY));
  const yy = meanOf(({ y }) => (y - meanY) ** 2);
  return readings.length >= 8 && xx > 0.02 && yy - (xy * xy) / xx > 0.005 ** 2;
}

/** Four ratios, zero among them. */
export const arbitraryRatios = fc.tuple(
  fc.oneof(fc.constant(0), evenly(0, 5)),
  fc.oneof(fc.constant(0), evenly(0, 5)),
  fc.oneof(fc.constant(0), evenly(0, 5)),
  fc.oneof(fc.constant(0), evenly(0, 5)),
);
