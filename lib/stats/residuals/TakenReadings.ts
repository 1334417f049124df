import type { WearReading, WearStatistics } from '../wear/types';

/**
 * Readings of a group's statistics, column by column: those of one unit after those of another in the statistics' order, each
 * unit's in the order in which they were taken.
 */
export interface TakenReadings {
  /** First reading of every unit, and the number of readings at the end: length units + 1. */
  readonly firstReading: Int32Array;
  /** Place of the reading's run among those of the statistics. */
  readonly run: Int32Array;
  /** Run hours / 10,000. */
  readonly x: Float64Array;
  /** mm. */
  readonly y: Float64Array;
  /** Share of the noise precision that the reading keeps: 1 for a plain reading. */
  readonly weight: Float64Array;
}

/** Readings in columns, with the place of each in the list that they came in. */
export interface OrderedReadings {
  readonly taken: TakenReadings;
  readonly places: Int32Array;
}

/**
 * Puts a list of readings into columns.
 *
 * @param readings those of the statistics, each unit's in the order in which they were taken
 * @throws Error if they are not those of the statistics
 */
export function takenReadings(
  { unitNames, runNames, firstRun, count }: WearStatistics,
  readings: readonly WearReading[],
): OrderedReadings {
  const runOf = new Map<string, { readonly unit: number; readonly run: number; left: number }>();
  const firstReading = new Int32Array(unitNames.length + 1);
  for (const [unit, name] of unitNames.entries()) {
    firstReading[unit + 1] = firstReading[unit] as number;
    for (let run = firstRun[unit] as number; run < (firstRun[unit + 1] as number); run++) {
      const left = count[run] as number;
      runOf.set(JSON.stringify([name, runNames[run]]), { unit, run, left });
      firstReading[unit + 1] = (firstReading[unit + 1] as number) + left;
    }
  }
  const next = firstReading.slice();
  const places = new Int32Array(readings.length);
  const run = new Int32Array(readings.length);
  for (const [place, reading] of readings.entries()) {
    const found = runOf.get(JSON.stringify([reading.unit, reading.run]));
    if (found === undefined || --found.left < 0) {
      throw new Error(
        `takenReadings requires the readings of its statistics, got another of unit ${reading.unit} run ${reading.run}`,
      );
    }
    const at = next[found.unit] as number;
    next[found.unit] = at + 1;
    places[at] = place;
    run[at] = found.run;
  }
  const column = (value: (reading: WearReading) => number) =>
    Float64Array.from(places, (place) => value(readings[place] as WearReading));
  const taken = {
    firstReading,
    run,
    x: column(({ x }) => x),
    y: column(({ y }) => y),
    weight: column(({ weight = 1 }) => weight),
  };
  return { taken, places };
}
