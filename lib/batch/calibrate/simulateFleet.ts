import type { WearReading } from '../../stats/wear/types';
import { seededDraws } from './seededDraws';

/** Standard deviations of a made-up fleet; mm, slopes mm per 10,000 h. */
export interface FleetTruth {
  readonly noise: number;
  readonly startRun: number;
  readonly slopeRun: number;
  readonly startUnit: number;
  readonly slopeUnit: number;
}

/** One run with the line that its readings scatter about. */
export interface TrueRun {
  readonly unit: string;
  readonly run: string;
  readonly start: number;
  readonly slope: number;
  readonly lastX: number;
}

export interface SimulatedFleet {
  readonly readings: readonly WearReading[];
  /** Last run of every unit. */
  readonly current: readonly TrueRun[];
}

/**
 * A made-up fleet: start 0.20 mm, slope 0.08 mm per 10,000 h, 2 to 4 runs a unit of 2 or 3 readings each at
 * overhauls 8,000 to 16,000 h apart, rounded to 0.01 mm if asked for.
 */
export function simulateFleet(
  seed: number,
  units: number,
  truth: FleetTruth,
  rounded = true,
): SimulatedFleet {
  const { uniform, normal } = seededDraws(seed);
  const readings: WearReading[] = [];
  const current: TrueRun[] = [];
  for (let i = 0; i < units; i++) {
    const unit = `U${i + 1}`;
    const unitStart = 0.2 + truth.startUnit * normal();
    const unitSlope = 0.08 + truth.slopeUnit * normal();
    const runs = 2 + Math.floor(3 * uniform());
    for (let j = 0; j < runs; j++) {
      const run = `${unit}-${j + 1}`;
      const start = unitStart + truth.startRun * normal();
      const slope = unitSlope + truth.slopeRun * normal();
      const count = 2 + Math.floor(2 * uniform());
      let x = 0;
      for (let k = 0; k < count; k++) {
        if (k > 0) x += 0.8 + 0.8 * uniform();
        const y = start + slope * x + truth.noise * normal();
        readings.push({ unit, run, x, y: rounded ? Math.round(y * 100) / 100 : y });
      }
      if (j === runs - 1) current.push({ unit, run, start, slope, lastX: x });
    }
  }
  return { readings, current };
}
