import type { ChartSides } from './ChartKind';
import { CUSUM_K } from './ChartKind';
import type { OutsideLimits } from './individualsChart';

/** A signal of a CUSUM with the estimated start of the shift. */
export interface CusumSignal extends OutsideLimits {
  /** First reading after the CUSUM was last at zero: the shift is estimated to have begun with it. */
  readonly shiftStart: number;
}

/** CUSUM chart of z, both sides as sums that are never negative. */
export interface CusumChart {
  readonly upper: readonly number[];
  /** Null where the series is looked at on its upper side only. */
  readonly lower: readonly number[] | null;
  /** In the order of the readings; sums at a signal are positive on either side. */
  readonly signals: readonly CusumSignal[];
}

/**
 * CUSUM of z: S = max(0, S + z - k) from 0, signal at S > threshold; the lower side the same with -z.
 *
 * After a signal its side starts again from 0 with the next reading. The shift is estimated to have begun with the
 * first reading after the last zero. Throws if a z is not finite, or threshold or k negative.
 * Page 1954, Biometrika 41, 100.
 */
export function cusumChart(
  z: readonly number[],
  threshold: number,
  sides: ChartSides = 'both',
  k: number = CUSUM_K,
): CusumChart {
  if (!z.every(Number.isFinite) || !(k >= 0) || !(threshold >= 0)) {
    throw new Error(`cusumChart requires finite z, threshold and k of at least 0, got ${threshold} and ${k}`);
  }
  const upper = oneSide(z, threshold, k, 'upper');
  if (sides === 'upper') return { upper: upper.sums, lower: null, signals: upper.signals };
  const lower = oneSide(
    z.map((value) => -value),
    threshold,
    k,
    'lower',
  );
  const signals = [...upper.signals, ...lower.signals].sort((one, other) => one.index - other.index);
  return { upper: upper.sums, lower: lower.sums, signals };
}

function oneSide(z: readonly number[], threshold: number, k: number, side: 'upper' | 'lower') {
  const signals: CusumSignal[] = [];
  let [sum, shiftStart, started] = [0, 0, true];
  const sums = z.map((value, index) => {
    if (started || sum === 0) [sum, shiftStart, started] = [0, index, false];
    sum = Math.max(0, sum + value - k);
    started = sum > threshold;
    if (started) signals.push({ index, side, value: sum, limit: threshold, shiftStart });
    return sum;
  });
  return { sums, signals };
}
