import { findRoot } from './findRoot';
import { studentQuantile, studentTail } from './studentTable';
import type { LimitSide, LineMixture, MeanSd } from './types';

/** Rounding may not make a variance zero or negative. */
const SMALLEST = Number.MIN_VALUE;
/** Widest bracket left by a root search, as a share of the bracket it started from. */
const PRECISION = 1e-8;

/**
 * Level at x: mean and standard deviation of the mixture, mm, the t variance factor nu / (nu - 2) included.
 *
 * Infinite with 2 degrees of freedom or fewer, which integrateWear refuses.
 */
export function levelAt(mixture: LineMixture, x: number): MeanSd {
  const { weight, table } = mixture;
  const factor = table.degreesOfFreedom / (table.degreesOfFreedom - 2);
  const mean = weight.reduce((sum, share, k) => sum + share * meanAt(mixture, k, x), 0);
  const variance = weight.reduce((sum, share, k) => {
    return sum + share * (factor * squareAt(mixture, k, x) + (meanAt(mixture, k, x) - mean) ** 2);
  }, 0);
  return { mean, sd: Math.sqrt(variance) };
}

/** Slope: mean and standard deviation of the mixture, mm per 10,000 h. */
export function slopeOf(mixture: LineMixture): MeanSd {
  const { slope: start, slopeSlope: startStart } = mixture;
  return levelAt({ ...mixture, start, startStart }, 0);
}

/**
 * Chance that the level is past a limit at x: P(level(x) >= limit) for an upper limit, P(level(x) <= limit) for
 * a lower one; x in run hours / 10,000, limit in mm.
 */
export function chancePast(mixture: LineMixture, limit_mm: number, side: LimitSide, x: number): number {
  return probability(mixture, x, limit_mm, side === 'upper' ? -1 : 1, 0, 0);
}

/** Level at x below which the given probability lies, mm. Throws unless 0 < probability < 1. */
export function levelQuantile(mixture: LineMixture, x: number, below: number): number {
  return quantile(mixture, x, below, 0, 0);
}

/**
 * Reading at x below which the given probability lies, mm: the level with the noise variance s2 and any extra
 * variance added (an interval reading: width squared / 12). Throws unless 0 < probability < 1.
 */
export function readingQuantile(mixture: LineMixture, x: number, below: number, extraVariance = 0): number {
  return quantile(mixture, x, below, 1, extraVariance);
}

/** Probability that a reading at x lies below y mm (or above it), noise and extra variance included. */
export function readingProbability(
  mixture: LineMixture,
  x: number,
  y_mm: number,
  extraVariance = 0,
  side: 'below' | 'above' = 'below',
): number {
  return probability(mixture, x, y_mm, side === 'below' ? 1 : -1, 1, extraVariance);
}

/** Mean of one component at x. */
function meanAt({ start, slope }: LineMixture, k: number, x: number): number {
  return (start[k] as number) + (slope[k] as number) * x;
}

/** Squared t scale of one component at x; rounding may not make it negative. */
function squareAt({ startStart, startSlope, slopeSlope }: LineMixture, k: number, x: number): number {
  const square =
    (startStart[k] as number) + x * (2 * (startSlope[k] as number) + x * (slopeSlope[k] as number));
  return Math.max(square, SMALLEST);
}

/**
 * P(value <= threshold) for direction 1, P(value >= threshold) for -1; noise 1 adds the reading's own noise.
 *
 * Every forecast spends its time here, so the table is read in place rather than through studentCdf.
 */
function probability(
  mixture: LineMixture,
  x: number,
  threshold: number,
  direction: 1 | -1,
  noise: 0 | 1,
  extraVariance: number,
): number {
  const { weight, start, slope, startStart, startSlope, slopeSlope, s2, table } = mixture;
  const { coefficients, stepsPerUnit, last, negligibleBeyond } = table;
  let sum = 0;
  for (let k = 0; k < weight.length; k++) {
    const variance =
      (startStart[k] as number) +
      x * (2 * (startSlope[k] as number) + x * (slopeSlope[k] as number)) +
      noise * (s2[k] as number) +
      extraVariance;
    const distance = direction * (threshold - (start[k] as number) - (slope[k] as number) * x);
    const z = distance / Math.sqrt(Math.max(variance, SMALLEST));
    const far = Math.abs(z);
    let tail = 0;
    if (far < last) {
      const position = far * stepsPerUnit;
      const step = Math.floor(position);
      const t = position - step;
      const p = 4 * step;
      const bend = (coefficients[p + 2] as number) + t * (coefficients[p + 3] as number);
      tail = (coefficients[p] as number) + t * ((coefficients[p + 1] as number) + t * bend);
    } else if (!negligibleBeyond) {
      tail = studentTail(table, z);
    }
    sum += (weight[k] as number) * (z < 0 ? tail : 1 - tail);
  }
  return Math.min(1, sum);
}

/** The mixture's quantile lies between the least and the greatest of its components' quantiles. */
function quantile(
  mixture: LineMixture,
  x: number,
  below: number,
  noise: 0 | 1,
  extraVariance: number,
): number {
  if (!(below > 0 && below < 1))
    throw new Error(`quantile requires a probability inside 0 to 1, got ${below}`);
  const standard = studentQuantile(mixture.table, below);
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < mixture.weight.length; k++) {
    const square = squareAt(mixture, k, x) + noise * (mixture.s2[k] as number) + extraVariance;
    const value = meanAt(mixture, k, x) + standard * Math.sqrt(square);
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  const margin = 1e-9 * (greatest - least) + 1e-12 * Math.max(Math.abs(least), Math.abs(greatest)) + 1e-12;
  const excess = (value: number) => probability(mixture, x, value, 1, noise, extraVariance) - below;
  const [low, high] = [least - margin, greatest + margin];
  const [excessLow, excessHigh] = [excess(low), excess(high)];
  // Weights sum to 1 but for rounding, which shows where all components agree.
  if (excessLow >= 0) return low;
  if (excessHigh <= 0) return high;
  return findRoot(excess, low, high, PRECISION * (greatest - least) + margin, excessLow, excessHigh);
}
