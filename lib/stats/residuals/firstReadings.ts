import type { WearReading, WearRow, WearStatistics } from '../wear/types';
import { sumRun } from '../wear/wearStatistics';
import { statisticsAbout } from '../wear/wearStatisticsFromColumns';
import { runSumsOf } from '../wear/wearStatisticsFromRows';

/**
 * Sufficient statistics of the first 1, 2, ... readings of one unit, y counted from a centre: each costs the run of its last
 * reading and not all runs again.
 *
 * @param own readings of one unit in the order in which they were taken, checked as wearStatistics checks them
 * @param yCentre mm
 * Returns a function of the number of readings. It keeps what it summed, so that it is cheap where numbers rise.
 */
export function firstReadings(
  own: readonly WearReading[],
  yCentre: number,
): (count: number) => WearStatistics {
  let counted = 0;
  const runs = new Map<string, { readings: WearReading[]; row: WearRow | null }>();
  return (count) => {
    if (count < counted) {
      runs.clear();
      counted = 0;
    }
    for (; counted < count; counted++) {
      const reading = own[counted] as WearReading;
      const run = runs.get(reading.run) ?? { readings: [], row: null };
      runs.set(reading.run, run);
      run.readings.push(reading);
      run.row = null;
    }
    const rows: WearRow[] = [];
    for (const run of runs.values()) {
      run.row ??= sumRun(run.readings);
      rows.push(run.row);
    }
    const first = Int32Array.of(0, rows.length);
    return statisticsAbout(yCentre, [own[0]?.unit ?? ''], first, [...runs.keys()], runSumsOf(rows));
  };
}
