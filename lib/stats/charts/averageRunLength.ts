import type { ChartKind } from './ChartKind';
import { chartChain, type EwmaLimits } from './chartChain';

/** The hazard of a signal has settled once it changes by less than this share over this many readings. */
const SETTLED = 1e-9;
const OVER = 10;
const MOST_READINGS = 100_000;
/** Hazards below this are rounding. */
const RAREST = 1e-13;
/** A chart that has signalled but for this probability adds nothing more. */
const SILENT = 1e-14;

/**
 * Average run length: mean number of readings up to the first signal of a chart just started, for independent
 * normal z with the given mean and standard deviation 1.
 *
 * The sum of the probabilities that the chart is still silent, reading after reading; once the hazard of a signal
 * is constant the rest is a geometric series. Of the two sides of a cusum, 1 / both = 1 / upper + 1 / lower.
 */
export function averageRunLength(
  chart: ChartKind,
  threshold: number,
  shift = 0,
  limits: EwmaLimits = 'exact',
): number {
  const sides = chart.kind === 'cusum' && chart.sides === 'both' ? [shift, -shift] : [shift];
  const length = 1 / sides.reduce((rate, side) => rate + 1 / oneSide(chart, threshold, side, limits), 0);
  if (Number.isFinite(length)) return length;
  throw new Error(`averageRunLength requires a threshold with signals, got ${threshold} with none`);
}

/** Infinite where signals are too rare to be told from rounding. */
function oneSide(chart: ChartKind, threshold: number, shift: number, limits: EwmaLimits): number {
  const chain = chartChain(chart, threshold, shift, limits);
  let [silent, sum, hazard, settledFor] = [1, 0, 0, 0];
  for (let t = 0; t < MOST_READINGS; t++) {
    sum += silent;
    const now = chain.next();
    if (now < SILENT) return sum;
    const hazardNow = 1 - now / silent;
    settledFor = Math.abs(hazardNow - hazard) <= SETTLED * hazardNow + RAREST ? settledFor + 1 : 0;
    [silent, hazard] = [now, hazardNow];
    if (settledFor >= OVER) return hazard > RAREST ? sum + silent / hazard : Number.POSITIVE_INFINITY;
  }
  return sum + silent / hazard;
}
