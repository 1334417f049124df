import { anomCritical } from './anomCritical';

/** Values of one level: of a site, a duty, a workshop. */
export interface Level {
  readonly name: string;
  readonly values: readonly number[];
}

/** A level's mean with the limits that all means keep at once where levels do not differ. */
export interface LevelMean {
  readonly name: string;
  readonly count: number;
  readonly mean: number;
  readonly lower: number;
  readonly upper: number;
  readonly outside: 'none' | 'lower' | 'upper';
}

/** Analysis of means, in the units of the values; or why there is none. */
export type AnalysisOfMeans =
  | {
      readonly grandMean: number;
      /** Standard deviation within levels, or the one given. */
      readonly sd: number;
      /** Null where the standard deviation was given. */
      readonly degreesOfFreedom: number | null;
      /** Critical value h. */
      readonly critical: number;
      readonly confidence: number;
      readonly levels: readonly LevelMean[];
      readonly reason: null;
    }
  | { readonly reason: string };

/**
 * Analysis of means: which levels' means lie outside grand mean +/- h s sqrt((N - n) / (N n)).
 *
 * s is pooled within levels with N - k degrees of freedom, or given where known, as 1 for forecast residuals; h
 * makes the limits hold for all levels at once. Levels without values are left out. Throws if a value is not finite.
 * Ott 1967, Industrial Quality Control 24, 101; Nelson 1982, Journal of Quality Technology 14, 21.
 */
export function analysisOfMeans(
  given: readonly Level[],
  confidence = 0.95,
  knownSd: number | null = null,
): AnalysisOfMeans {
  const levels = given.filter(({ values }) => values.length > 0);
  if (!levels.every(({ values }) => values.every(Number.isFinite))) {
    throw new Error('analysisOfMeans requires finite values, got others');
  }
  if (levels.length < 2) {
    return { reason: `a comparison needs at least 2 levels with values, got ${levels.length}` };
  }
  const sizes = levels.map(({ values }) => values.length);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const degreesOfFreedom = knownSd === null ? total - levels.length : null;
  if (degreesOfFreedom === 0) {
    return { reason: `a comparison needs 2 values in some level, all ${levels.length} have one` };
  }
  const sd = knownSd ?? Math.sqrt(squaresWithin(levels) / (total - levels.length));
  if (!(sd > 0)) return { reason: `the ${total} values do not vary within their levels` };
  const grandMean = meanOf(levels.flatMap(({ values }) => values));
  const critical = anomCritical(sizes, degreesOfFreedom ?? Number.POSITIVE_INFINITY, confidence);
  const means = levels.map(({ name, values }): LevelMean => {
    const count = values.length;
    const mean = meanOf(values);
    const half = critical * sd * Math.sqrt((total - count) / (total * count));
    const [lower, upper] = [grandMean - half, grandMean + half];
    return {
      name,
      count,
      mean,
      lower,
      upper,
      outside: mean < lower ? 'lower' : mean > upper ? 'upper' : 'none',
    };
  });
  return { grandMean, sd, degreesOfFreedom, critical, confidence, levels: means, reason: null };
}

function squaresWithin(levels: readonly Level[]): number {
  return levels.reduce((sum, { values }) => {
    const mean = meanOf(values);
    return values.reduce((squares, value) => squares + (value - mean) ** 2, sum);
  }, 0);
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
