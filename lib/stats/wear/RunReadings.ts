import type { WearStatistics } from './types';

/** Readings of a group's statistics, column by column, those of one run after those of another in the statistics' order. */
export interface RunReadings {
  /** Run hours / 10,000. */
  readonly x: Float64Array;
  /** mm. */
  readonly y: Float64Array;
  /** Share of the noise precision that the reading keeps: 1 for a plain reading. */
  readonly weight: Float64Array;
}

/** Calls back for every reading with its run, in order. */
export function forEachReading(
  { count }: WearStatistics,
  { x, y, weight }: RunReadings,
  visit: (run: number, x: number, y: number, weight: number, reading: number) => void,
): void {
  let reading = 0;
  for (let run = 0; run < count.length; run++) {
    for (let k = count[run] as number; k > 0; k--, reading++) {
      visit(run, x[reading] as number, y[reading] as number, weight[reading] as number, reading);
    }
  }
}
