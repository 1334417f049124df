import type { RunReadings } from '../../../lib/stats/wear/RunReadings';
import type { WearReading, WearStatistics } from '../../../lib/stats/wear/types';

/** Readings as columns, in the order of their runs in the statistics. */
export function inRunOrder(statistics: WearStatistics, readings: readonly WearReading[]): RunReadings {
  const { unitNames, runNames, firstRun } = statistics;
  const placeOf = new Map(
    unitNames.flatMap((unit, i) =>
      runNames
        .slice(firstRun[i], firstRun[i + 1])
        .map((run, k) => [JSON.stringify([unit, run]), (firstRun[i] as number) + k] as const),
    ),
  );
  const place = ({ unit, run }: WearReading) => placeOf.get(JSON.stringify([unit, run])) as number;
  const ordered = readings.toSorted((one, other) => place(one) - place(other));
  return {
    x: Float64Array.from(ordered, ({ x }) => x),
    y: Float64Array.from(ordered, ({ y }) => y),
    weight: Float64Array.from(ordered, ({ weight = 1 }) => weight),
  };
}
