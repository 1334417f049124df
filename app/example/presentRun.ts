import type { MarginRow, SeriesReading, UnitResult, UnitSeries } from '../../lib/analysis/types';

/** Hours that two hours on the unit may differ by and be the same: both come from sums of meter hours. */
const same_h = 0.5;

/** The run that the unit is in, in one series. */
export interface PresentRun {
  /** Hours on the unit when it started. */
  readonly start_h: number;
  readonly runHours: number;
  /** What started it; null if the unit was new then, or nothing is on record. */
  readonly reset: UnitSeries['resets'][number] | null;
  readonly readings: readonly SeriesReading[];
}

/** The present run of a margin's series; null where the hours now are not known. */
export function presentRun(
  { unit }: UnitResult,
  { resets, readings }: UnitSeries,
  { runHours }: MarginRow,
): PresentRun | null {
  if (unit.hoursNow === null || runHours === null) return null;
  const start_h = unit.hoursNow - runHours;
  const startsThere = (hours: number) => Math.abs(hours - start_h) < same_h;
  return {
    start_h,
    runHours,
    reset: resets.find(({ unitHours }) => startsThere(unitHours)) ?? null,
    readings: readings.filter((one) => startsThere(one.unitHours - one.runHours)),
  };
}
