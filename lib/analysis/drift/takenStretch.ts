import type { TakenReadings } from '../../stats/residuals/TakenReadings';
import type { WearStatistics } from '../../stats/wear/types';

/** Columns of readings of many groups: run is its number within the unit. */
export interface ReadingColumns {
  readonly run: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly weight: Float64Array;
}

/**
 * The readings of one group and series, from one place up to but without another, with the places of their runs.
 *
 * @param unitOf unit of a reading, counted from the stretch's first; the units follow each other as in the statistics
 * @throws Error if a unit or run is not one of the statistics
 */
export function takenStretch(
  { unitNames, runNames, firstRun }: WearStatistics,
  columns: ReadingColumns,
  from: number,
  to: number,
  unitOf: (reading: number) => string,
): TakenReadings {
  const firstReading = new Int32Array(unitNames.length + 1).fill(to - from);
  const run = new Int32Array(to - from);
  let unit = -1;
  let place = 0;
  for (let reading = 0; reading < run.length; reading++) {
    if (unit < 0 || unitOf(reading) !== unitNames[unit]) {
      unit += 1;
      place = firstRun[unit] as number;
      firstReading[unit] = reading;
    }
    const name = String(columns.run[from + reading]);
    if (runNames[place] !== name) place = runNames.indexOf(name, firstRun[unit]);
    if (unitOf(reading) !== unitNames[unit] || place < 0 || place >= (firstRun[unit + 1] as number)) {
      throw new Error(
        `takenStretch requires readings of the statistics' units in their order, got one of ${unitOf(reading)} run ${name} for ${unitNames[unit] ?? 'none'}`,
      );
    }
    run[reading] = place;
  }
  return {
    firstReading,
    run,
    x: columns.x.subarray(from, to),
    y: columns.y.subarray(from, to),
    weight: columns.weight.subarray(from, to),
  };
}
