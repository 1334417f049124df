import { readingScore } from '../../stats/residuals/readingScore';
import { readingQuantile } from '../../stats/wear/forecast';
import type { Clock } from './benchEntry';
import { clocks } from './boxes';
import { intervalVariance, middle_mm, type Reading } from './typedReading';
import type { CheckBasis, Expected, LineAt, Stage } from './types';

/** What is foretold of one box: of a clock position the mean of the set, its departure from it, and its own spread. */
export function boxLine(basis: CheckBasis, stage: Stage, clock: Clock | null): LineAt | null {
  const { level, clock: forecast } = basis.forecasts[stage];
  if (level === null || clock === null) return level;
  if (forecast === null) return null;
  const departure = forecast.departures_mm[clocks.indexOf(clock)] ?? 0;
  const { line, x } = level;
  const start = line.start.map((value) => value + departure);
  return { line: { ...line, start, s2: line.s2.map(() => forecast.sd_mm ** 2) }, x };
}

/** 10, 50 and 90 % of the reading, never below zero where it cannot be. */
export function expectedOf(at: LineAt | null, neverNegative: boolean): Expected | null {
  if (at === null) return null;
  const quantile = (below: number) => {
    const value = readingQuantile(at.line, at.x, below);
    return neverNegative ? Math.max(0, value) : value;
  };
  return { lower_mm: quantile(0.1), median_mm: quantile(0.5), upper_mm: quantile(0.9) };
}

/** Score of a reading times a factor against what is foretold; of one without an upper end only too large a one counts. */
export function scoreOf(at: LineAt, reading: Reading, factor = 1): number {
  const extra = intervalVariance(reading) * factor ** 2;
  const line = extra === 0 ? at.line : { ...at.line, s2: at.line.s2.map((variance) => variance + extra) };
  const { z } = readingScore(line, at.x, middle_mm(reading) * factor);
  return reading.upper_mm === null ? Math.max(0, z) : z;
}
