import { clockNoise, type KnownSet } from '../../stats/benchCheck/clockForecast';
import type { MarginQuestion } from '../currentLine';
import type { GaugeRepeatability } from '../repeatability/gaugeRepeatability';

/** How far one reading repeats, and what that is known from. */
export interface Gauge {
  /** Standard deviation of one reading, mm. */
  readonly sd_mm: number;
  readonly from: 'pairs' | 'sets' | 'fit';
}

/** Fewest pairs of readings of one state from which the noise of a reading is taken. */
const fewestPairs = 8;
/** The mean of four readings has half the noise of one. */
const ofMean = 2;

/**
 * Gauge of one characteristic: from pairs of readings of one state; of clock readings from how sets of one run lie about their
 * means; else from the scatter about the fitted lines of the sister group. Null where none is known.
 */
export function gaugeOf(
  characteristic: string,
  shape: 'single' | 'four_clock',
  questions: ReadonlyMap<string, MarginQuestion>,
  repeatabilities: readonly GaugeRepeatability[],
  sets: readonly KnownSet[],
): Gauge | null {
  const series = shape === 'single' ? characteristic : `${characteristic}_mean`;
  const times = shape === 'single' ? 1 : ofMean;
  const pooled = repeatabilities.find((one) => one.series === series)?.pooled ?? null;
  if (pooled !== null && pooled.pairs >= fewestPairs) return { sd_mm: times * pooled.sd_mm, from: 'pairs' };
  const ofSets = clockNoise(sets);
  if (ofSets !== null) return { sd_mm: ofSets, from: 'sets' };
  const fitted = questions.get(series)?.fit?.fit?.sdNoise_mm ?? 0;
  return fitted > 0 ? { sd_mm: times * fitted, from: 'fit' } : null;
}
