import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import type { WearFit, WearReading, WearStatistics } from './types';

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

/**
 * Estimate, standard error and t of a third fixed effect, c x squared, with the ratios held at the REML fit.
 *
 * Generalised least squares of y on 1, x and x squared; x in run hours / 10,000, c in mm per (10,000 h) squared,
 * s2 = RSS / (N - 3). Runs and units are absorbed one random effect after the other, of column z and squared
 * ratio d: G - d g g' / (1 + d z'z), where g is the column of G that belongs to z. The quadratic is taken
 * orthogonal to 1 and x over all readings, which changes its estimate in nothing but rounding.
 * Null where the readings lie at fewer than 3 run hours, or the term cannot be told from the random lines.
 * Throws if a reading's run is not in the statistics. Cost: one pass over the readings.
 */
export function curvature(
  statistics: WearStatistics,
  fit: WearFit,
  readings: readonly WearReading[],
): Curvature | null {
  if (new Set(readings.map((reading) => reading.x)).size < 3) return null;
  const runs = runGrams(statistics, readings);
  const own = runs.reduce((sum, gram) => sum + at(gram, QUADRATIC, QUADRATIC), 0);
  const group = absorbTree(statistics, fit, runs);
  const squares = at(group, READING, READING);
  eliminate(group, START);
  eliminate(group, SLOPE);
  const information = at(group, QUADRATIC, QUADRATIC);
  if (!(information > 1e-10 * own)) return null;
  const estimate = at(group, QUADRATIC, READING) / information;
  eliminate(group, QUADRATIC);
  const degreesOfFreedom = readings.length - 3;
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

function runGrams(statistics: WearStatistics, readings: readonly WearReading[]): readonly Gram[] {
  const indexOf = runIndex(statistics);
  const grams = statistics.runNames.map(() => new Float64Array(COLUMNS * COLUMNS));
  const quadratic = orthogonalQuadratic(readings);
  for (const reading of readings) {
    const { x, y, weight = 1 } = reading;
    const gram = grams[indexOf(reading)] as Gram;
    const row = [1, x, quadratic(x), y - statistics.yCentre];
    for (let i = 0; i < COLUMNS; i++) {
      for (let j = 0; j < COLUMNS; j++) {
        const k = COLUMNS * i + j;
        gram[k] = (gram[k] as number) + weight * (row[i] as number) * (row[j] as number);
      }
    }
  }
  return grams;
}

/** Index in the statistics of a reading's run. */
export function runIndex({
  unitNames,
  runNames,
  firstRun,
}: WearStatistics): (reading: WearReading) => number {
  const units = new Map(
    unitNames.map((unit, i) => {
      const first = firstRun[i] as number;
      const names = runNames.slice(first, firstRun[i + 1]);
      return [unit, new Map(names.map((run, k) => [run, first + k]))];
    }),
  );
  return ({ unit, run }) => {
    const index = units.get(unit)?.get(run);
    if (index === undefined)
      throw new Error(`fitChecks requires readings of its statistics, got ${unit}, ${run}`);
    return index;
  };
}

/** x squared less its least-squares line over all readings. */
function orthogonalQuadratic(readings: readonly WearReading[]): (x: number) => number {
  const sum = (value: (reading: WearReading) => number) =>
    readings.reduce((total, reading) => total + (reading.weight ?? 1) * value(reading), 0);
  const weights = sum(() => 1);
  const centre = sum(({ x }) => x) / weights;
  const squares = sum(({ x }) => (x - centre) ** 2);
  const skew = sum(({ x }) => (x - centre) ** 3) / squares;
  return (x) => (x - centre - skew) * (x - centre) - squares / weights;
}

function absorbTree(
  { firstRun, unitNames }: WearStatistics,
  { ratios }: WearFit,
  runs: readonly Gram[],
): Gram {
  const group = new Float64Array(COLUMNS * COLUMNS);
  unitNames.forEach((_, i) => {
    const unit = new Float64Array(COLUMNS * COLUMNS);
    for (const run of runs.slice(firstRun[i], firstRun[i + 1])) {
      add(unit, absorbed(run, ratios.startRun, ratios.slopeRun));
    }
    add(group, absorbed(unit, ratios.startUnit, ratios.slopeUnit));
  });
  return group;
}

function absorbed(gram: Gram, startRatio: number, slopeRatio: number): Gram {
  const result = Float64Array.from(gram);
  for (const [column, ratio] of [
    [START, startRatio],
    [SLOPE, slopeRatio],
  ] as const) {
    const d = ratio * ratio;
    subtractColumn(result, column, d / (1 + d * at(result, column, column)));
  }
  return result;
}

/** Takes a fixed effect out: least squares of the other columns on this one. */
function eliminate(gram: Gram, column: number): void {
  subtractColumn(gram, column, 1 / at(gram, column, column));
}

function subtractColumn(gram: Gram, column: number, factor: number): void {
  const values = Array.from({ length: COLUMNS }, (_, row) => at(gram, row, column));
  gram.forEach((value, k) => {
    const product = (values[Math.floor(k / COLUMNS)] as number) * (values[k % COLUMNS] as number);
    gram[k] = value - factor * product;
  });
}

function add(sum: Gram, gram: Gram): void {
  gram.forEach((value, k) => {
    sum[k] = (sum[k] as number) + value;
  });
}

function at(gram: Gram, row: number, column: number): number {
  return gram[COLUMNS * row + column] as number;
}
