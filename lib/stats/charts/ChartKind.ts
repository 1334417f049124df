/** Which departures a chart looks for. A series that is never negative is looked at on its upper side only. */
export type ChartSides = 'both' | 'upper';

/**
 * A chart of z, without its threshold.
 *
 * individuals: signal at |z| > threshold. ewma: E = (1 - lambda) E + lambda z from 0, signal at |E| > threshold x
 * its exact standard deviation at that reading. cusum: S = max(0, S + z - k) from 0, signal at S > threshold, and
 * the same with -z where both sides are looked at; each side is a chart of its own. After a signal a chart starts
 * again from 0.
 */
export type ChartKind =
  | { readonly kind: 'individuals'; readonly sides: ChartSides }
  | { readonly kind: 'ewma'; readonly sides: ChartSides; readonly lambda: number }
  | { readonly kind: 'cusum'; readonly sides: ChartSides; readonly k: number };

/** Weight of the newest z in the EWMA. */
export const EWMA_LAMBDA = 0.2;
/** Reference value of the CUSUM: half the shift, in standard deviations, that it is quickest to find. */
export const CUSUM_K = 0.5;
