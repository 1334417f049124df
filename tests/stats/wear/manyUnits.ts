import { seededDraws } from '../../../lib/batch/calibrate/seededDraws';
import type { WearReading } from '../../../lib/stats/wear/types';

/** 60 units of 5 runs of 2 readings; the given SDs of slopes and starts in mm, noise 0.01 mm. */
export function manyUnits(seed: number, sdSlope: number, sdStart: number): readonly WearReading[] {
  const { uniform, normal } = seededDraws(seed);
  return Array.from({ length: 60 }, (_, unit) => {
    const [startUnit, slopeUnit] = [sdStart * normal(), sdSlope * normal()];
    return Array.from({ length: 5 }, (__, run) => {
      const [start, slope] = [0.2 + startUnit + sdStart * normal(), 0.08 + slopeUnit + sdSlope * normal()];
      return [0.05 * uniform(), 0.8 + 0.6 * uniform()].map((x) => ({
        unit: `U${unit}`,
        run: `U${unit}-${run}`,
        x,
        y: start + slope * x + 0.01 * normal(),
      }));
    }).flat();
  }).flat();
}
