import type { ChartSides } from './ChartKind';
import { EWMA_LAMBDA } from './ChartKind';
import type { OutsideLimits } from './individualsChart';

/** One reading on an EWMA chart; the limit below is minus the limit above. */
export interface EwmaPoint {
  readonly ewma: number;
  /** Threshold x standard deviation of the EWMA at this reading. */
  readonly limit: number;
}

/** EWMA chart of z with its signals. */
export interface EwmaChart {
  readonly points: readonly EwmaPoint[];
  readonly signals: readonly OutsideLimits[];
}

/**
 * EWMA of z: E = (1 - lambda) E + lambda z from 0, against threshold x its standard deviation at the reading,
 * which is sqrt(lambda / (2 - lambda) (1 - (1 - lambda)^(2 t))) at the t-th reading since the chart started.
 *
 * After a signal the chart starts again from 0 with the next reading, so that every signal has readings of its
 * own. Throws if a z is not finite or lambda not between 0 and 1. Roberts 1959, Technometrics 1, 239.
 */
export function ewmaChart(
  z: readonly number[],
  threshold: number,
  sides: ChartSides = 'both',
  lambda: number = EWMA_LAMBDA,
): EwmaChart {
  if (!z.every(Number.isFinite) || !(lambda > 0 && lambda <= 1)) {
    throw new Error(`ewmaChart requires finite z and lambda over 0 up to 1, got lambda ${lambda}`);
  }
  const signals: OutsideLimits[] = [];
  let [ewma, faded, started] = [0, 1, true];
  const points = z.map((value, index) => {
    if (started) [ewma, faded, started] = [0, 1, false];
    ewma = (1 - lambda) * ewma + lambda * value;
    faded *= (1 - lambda) ** 2;
    const limit = threshold * Math.sqrt((lambda / (2 - lambda)) * (1 - faded));
    if (ewma > limit) signals.push({ index, side: 'upper', value: ewma, limit });
    if (sides === 'both' && ewma < -limit) signals.push({ index, side: 'lower', value: ewma, limit: -limit });
    started = signals.at(-1)?.index === index;
    return { ewma, limit };
  });
  return { points, signals };
}
