import type { WearStatistics } from './types';

/** Runs already summed, one column a sum, in order of unit; see WearRow. */
export interface RunSums {
  readonly count: Float64Array;
  readonly n: Float64Array;
  readonly log_weight_sum: Float64Array;
  readonly mean_x: Float64Array;
  readonly mean_y: Float64Array;
  readonly sxx_c: Float64Array;
  readonly sxy_c: Float64Array;
  readonly syy_c: Float64Array;
  readonly min_x: Float64Array;
  readonly max_x: Float64Array;
}

/**
 * Sufficient statistics of the wear model from columns of runs already summed.
 *
 * Sums about the start of the run and the group's mean reading follow from the sums about the run's own means:
 * Sxx = Sxx_centred + n mean_x squared, and likewise for the products. x is run hours / 10,000, y mm.
 *
 * @param unitNames units in the order of their runs
 * @param runsOfUnit runs of each of them, at least 1
 * @param runNames name of every run
 * Throws if a number is not finite, a weight sum or count is not positive, or there are other than the units' runs.
 */
export function wearStatisticsFromColumns(
  unitNames: readonly string[],
  runsOfUnit: ArrayLike<number>,
  runNames: readonly string[],
  sums: RunSums,
): WearStatistics {
  const firstRun = new Int32Array(unitNames.length + 1);
  for (let unit = 0; unit < unitNames.length; unit++) {
    firstRun[unit + 1] = (firstRun[unit] as number) + (runsOfUnit[unit] as number);
  }
  const runs = firstRun[unitNames.length] as number;
  checkSums(sums, runs);
  const { n, mean_y } = sums;
  const weights = total(n);
  const yCentre = n.reduce((sum, weight, r) => sum + (weight / weights) * (mean_y[r] as number), 0);
  return statisticsAbout(yCentre, unitNames, firstRun, runNames, sums);
}

/** The same about a given centre, mm; the sums are taken to be right. See WearStatistics for firstRun. */
export function statisticsAbout(
  yCentre: number,
  unitNames: readonly string[],
  firstRun: Int32Array,
  runNames: readonly string[],
  { count, n, log_weight_sum, mean_x, mean_y, sxx_c, sxy_c, syy_c, min_x, max_x }: RunSums,
): WearStatistics {
  const runs = n.length;
  const [sx, sxx, sy] = [new Float64Array(runs), new Float64Array(runs), new Float64Array(runs)];
  const [sxy, syy] = [new Float64Array(runs), new Float64Array(runs)];
  for (let r = 0; r < runs; r++) {
    const weight = n[r] as number;
    const meanX = mean_x[r] as number;
    const aboveCentre = (mean_y[r] as number) - yCentre;
    sx[r] = weight * meanX;
    sxx[r] = (sxx_c[r] as number) + weight * meanX * meanX;
    sy[r] = weight * aboveCentre;
    sxy[r] = (sxy_c[r] as number) + weight * meanX * aboveCentre;
    syy[r] = (syy_c[r] as number) + weight * aboveCentre ** 2;
  }
  return {
    unitNames,
    runNames,
    firstRun,
    count: Int32Array.from(count),
    n,
    sx,
    sxx,
    sy,
    sxy,
    syy,
    sxxCentred: sxx_c,
    sxyCentred: sxy_c,
    syyCentred: syy_c,
    minX: min_x,
    maxX: max_x,
    yCentre,
    readings: total(count),
    logWeightSum: total(log_weight_sum),
  };
}

function total(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}

function checkSums(sums: RunSums, runs: number): void {
  for (const [name, column] of Object.entries(sums) as [keyof RunSums, Float64Array][]) {
    if (column.length !== runs) {
      throw new Error(`wearStatistics requires ${name} of ${runs} runs, got ${column.length}`);
    }
    const isRight = (value: number) =>
      Number.isFinite(value) && (name === 'n' ? value > 0 : name !== 'count' || value >= 1);
    const wrong = column.findIndex((value) => !isRight(value));
    if (wrong >= 0) {
      throw new Error(
        `wearStatistics requires finite sums and at least one reading a run, got ${name} ${column[wrong]} of run ${wrong}`,
      );
    }
  }
}
