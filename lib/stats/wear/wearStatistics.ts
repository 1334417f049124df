import type { WearReading, WearRow, WearStatistics } from './types';
import { wearStatisticsFromRows } from './wearStatisticsFromRows';

/**
 * Sufficient statistics of the wear model from single readings: per run the sum of weights and the weighted
 * sums of x, x squared, y, x y and y squared, summed about the run's own means.
 *
 * x is run hours / 10,000, y mm. Throws if a number is not finite or a weight is not positive.
 */
export function wearStatistics(readings: Iterable<WearReading>): WearStatistics {
  const runs = new Map<string, WearReading[]>();
  for (const reading of readings) {
    checkReading(reading);
    const key = JSON.stringify([reading.unit, reading.run]);
    const run = runs.get(key);
    if (run) run.push(reading);
    else runs.set(key, [reading]);
  }
  return wearStatisticsFromRows([...runs.values()].map(sumRun));
}

/**
 * Weight of an interval reading: noise variance / (noise variance + width squared / 12), 1 for width 0.
 *
 * The midpoint stands for the reading; width is upper minus lower, mm. The variance added is that of a
 * uniform distribution over the interval.
 */
export function intervalWeight(sdNoise_mm: number, width_mm: number): number {
  if (!(sdNoise_mm > 0) || !(width_mm >= 0)) {
    throw new Error(
      `intervalWeight requires a positive noise and a width of at least 0, got ${sdNoise_mm}, ${width_mm}`,
    );
  }
  const ratio = width_mm / sdNoise_mm;
  return 1 / (1 + (ratio * ratio) / 12);
}

function checkReading({ x, y, weight = 1 }: WearReading): void {
  if (![x, y, weight].every(Number.isFinite) || weight <= 0) {
    throw new Error(
      `wearStatistics requires finite x and y and a positive weight, got ${x}, ${y}, ${weight}`,
    );
  }
}

/** Sums of the readings of one run, about its own means. */
export function sumRun(readings: readonly WearReading[]): WearRow {
  const { unit, run } = readings[0] as WearReading;
  let n = 0;
  let mean_x = 0;
  let mean_y = 0;
  let log_weight_sum = 0;
  for (const { x, y, weight = 1 } of readings) {
    n += weight;
    mean_x += weight * x;
    mean_y += weight * y;
    log_weight_sum += Math.log(weight);
  }
  mean_x /= n;
  mean_y /= n;
  const row = { unit, run, count: readings.length, n, mean_x, mean_y, log_weight_sum };
  const sums = {
    sxx_c: 0,
    sxy_c: 0,
    syy_c: 0,
    min_x: Number.POSITIVE_INFINITY,
    max_x: Number.NEGATIVE_INFINITY,
  };
  for (const { x, y, weight = 1 } of readings) {
    sums.sxx_c += weight * (x - mean_x) ** 2;
    sums.sxy_c += weight * (x - mean_x) * (y - mean_y);
    sums.syy_c += weight * (y - mean_y) ** 2;
    sums.min_x = Math.min(sums.min_x, x);
    sums.max_x = Math.max(sums.max_x, x);
  }
  return { ...row, ...sums };
}
