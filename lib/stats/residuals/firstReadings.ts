import type { WearReading, WearRow, WearStatistics } from '../wear/types';
import { sumRun } from '../wear/wearStatistics';

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
    return statisticsOf(rows, [...runs.keys()], own[0]?.unit ?? '', yCentre);
  };
}

function statisticsOf(
  rows: readonly WearRow[],
  runNames: readonly string[],
  unit: string,
  yCentre: number,
): WearStatistics {
  const column = () => new Float64Array(rows.length);
  const statistics = {
    unitNames: [unit],
    runNames,
    firstRun: Int32Array.of(0, rows.length),
    count: new Int32Array(rows.length),
    ...{ n: column(), sx: column(), sxx: column(), sy: column(), sxy: column(), syy: column() },
    ...{ sxxCentred: column(), sxyCentred: column(), syyCentred: column(), minX: column(), maxX: column() },
  };
  let [readings, logWeightSum] = [0, 0];
  for (const [r, row] of rows.entries()) {
    const { n, mean_x, sxx_c, sxy_c, syy_c } = row;
    const mean_y = row.mean_y - yCentre;
    statistics.count[r] = row.count;
    statistics.n[r] = n;
    statistics.sx[r] = n * mean_x;
    statistics.sxx[r] = sxx_c + n * mean_x * mean_x;
    statistics.sy[r] = n * mean_y;
    statistics.sxy[r] = sxy_c + n * mean_x * mean_y;
    statistics.syy[r] = syy_c + n * mean_y ** 2;
    statistics.sxxCentred[r] = sxx_c;
    statistics.sxyCentred[r] = sxy_c;
    statistics.syyCentred[r] = syy_c;
    statistics.minX[r] = row.min_x;
    statistics.maxX[r] = row.max_x;
    readings += row.count;
    logWeightSum += row.log_weight_sum ?? 0;
  }
  return { ...statistics, yCentre, readings, logWeightSum };
}
