import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import { forEachReading, type RunReadings } from './RunReadings';
import type { WearFit, WearStatistics } from './types';

/** Quadratic term in x beside the wear model, tested against no curvature. */
export interface Curvature {
  readonly estimate_mm_per_10kh2: number;
  readonly standardError_mm_per_10kh2: number;
  readonly t: number;
  /** N - 3. */
  readonly degreesOfFreedom: number;
  /** Two-sided. */
  readonly p: number;
}

/** Sums of products of the columns 1, x, quadratic in x, reading: symmetric, four by four, row by row. */
type Gram = Float64Array;
const [START, SLOPE, QUADRATIC, READING, COLUMNS] = [0, 1, 2, 3, 4];
const GRAM = COLUMNS * COLUMNS;

/**
 * Estimate, standard error and t of a third fixed effect, c x squared, with the ratios held at the REML fit.
 *
 * Generalised least squares of y on 1, x and x squared; x in run hours / 10,000, c in mm per (10,000 h) squared,
 * s2 = RSS / (N - 3). Runs and units are absorbed one random effect after the other, of column z and squared
 * ratio d: G - d g g' / (1 + d z'z), where g is the column of G that belongs to z. The quadratic is taken
 * orthogonal to 1 and x over all readings, which changes its estimate in nothing but rounding.
 * Null where the readings lie at fewer than 3 run hours, or the term cannot be told from the random lines.
 * Cost: one pass over the readings; readings of one run follow each other in the statistics' order.
 */
export function curvature(statistics: WearStatistics, fit: WearFit, readings: RunReadings): Curvature | null {
  if (new Set(readings.x).size < 3) return null;
  const runs = runGrams(statistics, readings);
  let own = 0;
  for (let run = 0; run < statistics.count.length; run++) {
    own += runs[GRAM * run + COLUMNS * QUADRATIC + QUADRATIC] as number;
  }
  const group = absorbTree(statistics, fit, runs);
  const squares = at(group, READING, READING);
  eliminate(group, START);
  eliminate(group, SLOPE);
  const information = at(group, QUADRATIC, QUADRATIC);
  if (!(information > 1e-10 * own)) return null;
  const estimate = at(group, QUADRATIC, READING) / information;
  eliminate(group, QUADRATIC);
  const degreesOfFreedom = readings.x.length - 3;
  // A parabola without scatter leaves rounding only: kept above it, so that t stays finite.
  const residualSquares = Math.max(at(group, READING, READING), 1e-15 * squares, Number.MIN_VALUE);
  const standardError = Math.sqrt(residualSquares / degreesOfFreedom) / Math.sqrt(information);
  const t = estimate / standardError;
  return {
    estimate_mm_per_10kh2: estimate,
    standardError_mm_per_10kh2: standardError,
    t,
    degreesOfFreedom,
    p: 2 * studentCdf(-Math.abs(t), degreesOfFreedom),
  };
}

/** Grams of all runs, one after the other. */
function runGrams(statistics: WearStatistics, readings: RunReadings): Float64Array {
  const grams = new Float64Array(GRAM * statistics.count.length);
  const quadratic = orthogonalQuadratic(readings);
  const row = new Float64Array(COLUMNS);
  forEachReading(statistics, readings, (run, x, y, weight) => {
    row[START] = 1;
    row[SLOPE] = x;
    row[QUADRATIC] = quadratic(x);
    row[READING] = y - statistics.yCentre;
    let k = GRAM * run;
    for (let i = 0; i < COLUMNS; i++) {
      for (let j = 0; j < COLUMNS; j++, k++) {
        grams[k] = (grams[k] as number) + weight * (row[i] as number) * (row[j] as number);
      }
    }
  });
  return grams;
}

/** x squared less its least-squares line over all readings. */
function orthogonalQuadratic({ x, weight }: RunReadings): (x: number) => number {
  const sum = (value: (x: number) => number) =>
    x.reduce((total, at_x, reading) => total + (weight[reading] as number) * value(at_x), 0);
  const weights = sum(() => 1);
  const centre = sum((at_x) => at_x) / weights;
  const squares = sum((at_x) => (at_x - centre) ** 2);
  const skew = sum((at_x) => (at_x - centre) ** 3) / squares;
  return (at_x) => (at_x - centre - skew) * (at_x - centre) - squares / weights;
}

function absorbTree({ firstRun, unitNames }: WearStatistics, { ratios }: WearFit, runs: Float64Array): Gram {
  const group = new Float64Array(GRAM);
  const unit = new Float64Array(GRAM);
  for (let i = 0; i < unitNames.length; i++) {
    unit.fill(0);
    for (let run = firstRun[i] as number; run < (firstRun[i + 1] as number); run++) {
      const gram = runs.subarray(GRAM * run, GRAM * (run + 1));
      absorb(gram, ratios.startRun, ratios.slopeRun);
      add(unit, gram);
    }
    absorb(unit, ratios.startUnit, ratios.slopeUnit);
    add(group, unit);
  }
  return group;
}

function absorb(gram: Gram, startRatio: number, slopeRatio: number): void {
  absorbColumn(gram, START, startRatio * startRatio);
  absorbColumn(gram, SLOPE, slopeRatio * slopeRatio);
}

function absorbColumn(gram: Gram, column: number, d: number): void {
  subtractColumn(gram, column, d / (1 + d * at(gram, column, column)));
}

/** Takes a fixed effect out: least squares of the other columns on this one. */
function eliminate(gram: Gram, column: number): void {
  subtractColumn(gram, column, 1 / at(gram, column, column));
}

function subtractColumn(gram: Gram, column: number, factor: number): void {
  const values = [0, 1, 2, 3].map((row) => at(gram, row, column));
  for (let k = 0; k < GRAM; k++) {
    const product = (values[k >> 2] as number) * (values[k & 3] as number);
    gram[k] = (gram[k] as number) - factor * product;
  }
}

function add(sum: Gram, gram: Gram): void {
  for (let k = 0; k < GRAM; k++) sum[k] = (sum[k] as number) + (gram[k] as number);
}

function at(gram: Gram, row: number, column: number): number {
  return gram[COLUMNS * row + column] as number;
}
