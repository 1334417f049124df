import { chanceToFill, fillChance, SMALLEST_SQUARE } from './mixtureChance';
import { newtonRoot } from './newtonRoot';
import { studentQuantile } from './studentTable';
import type { LimitSide, LineMixture, MeanSd } from './types';

/** Last step of a search, as a share of the range of the components' quantiles. */
const PRECISION = 1e-8;

/**
 * Level at x: mean and standard deviation of the mixture, mm, the t variance factor nu / (nu - 2) included.
 *
 * Infinite with 2 degrees of freedom or fewer, which integrateWear refuses.
 */
export function levelAt(mixture: LineMixture, x: number): MeanSd {
  const { weight, table } = mixture;
  const factor = table.degreesOfFreedom / (table.degreesOfFreedom - 2);
  let mean = 0;
  for (let k = 0; k < weight.length; k++) mean += (weight[k] as number) * meanAt(mixture, k, x);
  let variance = 0;
  for (let k = 0; k < weight.length; k++) {
    const off = meanAt(mixture, k, x) - mean;
    variance += (weight[k] as number) * (factor * squareAt(mixture, k, x) + off * off);
  }
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

/** Mean of one component at x. */
function meanAt({ start, slope }: LineMixture, k: number, x: number): number {
  return (start[k] as number) + (slope[k] as number) * x;
}

/** Squared t scale of one component at x; rounding may not make it negative. */
function squareAt({ startStart, startSlope, slopeSlope }: LineMixture, k: number, x: number): number {
  const square =
    (startStart[k] as number) + x * (2 * (startSlope[k] as number) + x * (slopeSlope[k] as number));
  return Math.max(square, SMALLEST_SQUARE);
}

const found = chanceToFill();

/** P(value <= threshold) for direction 1, P(value >= threshold) for -1, see fillChance. */
function probability(
  mixture: LineMixture,
  x: number,
  threshold: number,
  direction: 1 | -1,
  noise: 0 | 1,
  extraVariance: number,
): number {
  fillChance(found, mixture, x, threshold, direction, noise, extraVariance);
  return found.chance;
}

/** The mixture's quantile lies between the least and the greatest of its components' quantiles, and near their mean. */
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
  let [least, greatest, mean] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let k = 0; k < mixture.weight.length; k++) {
    const square = squareAt(mixture, k, x) + noise * (mixture.s2[k] as number) + extraVariance;
    const value = meanAt(mixture, k, x) + standard * Math.sqrt(square);
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
    mean += (mixture.weight[k] as number) * value;
  }
  const margin = 1e-9 * (greatest - least) + 1e-12 * Math.max(Math.abs(least), Math.abs(greatest)) + 1e-12;
  return newtonRoot(
    (value) => probability(mixture, x, value, 1, noise, extraVariance) - below,
    () => found.byThreshold,
    mean,
    least - margin,
    greatest + margin,
    true,
    PRECISION * (greatest - least) + margin,
  );
}
