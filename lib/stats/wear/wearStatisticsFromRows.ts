import type { WearRow, WearStatistics } from './types';

/**
 * Sufficient statistics of the wear model from runs already summed.
 *
 * Sums about the start of the run and the group's mean reading follow from the sums about the run's own means:
 * Sxx = Sxx_centred + n mean_x squared, and likewise for the products. x is run hours / 10,000, y mm.
 * Units and runs keep the order in which they first appear.
 * Throws if a number is not finite, a weight sum or count is not positive, or a run comes twice.
 */
export function wearStatisticsFromRows(rows: Iterable<WearRow>): WearStatistics {
  const byUnit = groupByUnit(rows);
  const ordered = [...byUnit.values()].flat();
  const firstRun = Int32Array.from([0, ...byUnit.values()].map(lengthOf));
  for (let unit = 1; unit < firstRun.length; unit++) {
    firstRun[unit] = (firstRun[unit] as number) + (firstRun[unit - 1] as number);
  }
  const weights = ordered.reduce((sum, row) => sum + row.n, 0);
  const yCentre = ordered.reduce((sum, row) => sum + (row.n / weights) * row.mean_y, 0);
  const column = (value: (row: WearRow) => number) => Float64Array.from(ordered, value);
  return {
    unitNames: [...byUnit.keys()],
    runNames: ordered.map((row) => row.run),
    firstRun,
    count: Int32Array.from(ordered, (row) => row.count),
    n: column((row) => row.n),
    sx: column((row) => row.n * row.mean_x),
    sxx: column((row) => row.sxx_c + row.n * row.mean_x * row.mean_x),
    sy: column((row) => row.n * (row.mean_y - yCentre)),
    sxy: column((row) => row.sxy_c + row.n * row.mean_x * (row.mean_y - yCentre)),
    syy: column((row) => row.syy_c + row.n * (row.mean_y - yCentre) ** 2),
    sxxCentred: column((row) => row.sxx_c),
    sxyCentred: column((row) => row.sxy_c),
    syyCentred: column((row) => row.syy_c),
    minX: column((row) => row.min_x),
    maxX: column((row) => row.max_x),
    yCentre,
    readings: ordered.reduce((sum, row) => sum + row.count, 0),
    logWeightSum: ordered.reduce((sum, row) => sum + (row.log_weight_sum ?? 0), 0),
  };
}

function lengthOf(runs: number | readonly WearRow[]): number {
  return typeof runs === 'number' ? runs : runs.length;
}

function groupByUnit(rows: Iterable<WearRow>): Map<string, WearRow[]> {
  const byUnit = new Map<string, WearRow[]>();
  const seen = new Set<string>();
  for (const row of rows) {
    checkRow(row);
    const key = JSON.stringify([row.unit, row.run]);
    if (seen.has(key)) {
      throw new Error(
        `wearStatisticsFromRows requires one row a run, got unit ${row.unit} run ${row.run} twice`,
      );
    }
    seen.add(key);
    const runs = byUnit.get(row.unit);
    if (runs) runs.push(row);
    else byUnit.set(row.unit, [row]);
  }
  return byUnit;
}

function checkRow(row: WearRow): void {
  const { count, n, mean_x, mean_y, sxx_c, sxy_c, syy_c, min_x, max_x, log_weight_sum = 0 } = row;
  const finite = [n, mean_x, mean_y, sxx_c, sxy_c, syy_c, min_x, max_x, log_weight_sum].every(
    Number.isFinite,
  );
  if (!finite || !(n > 0) || !(count >= 1)) {
    throw new Error(
      `wearStatisticsFromRows requires finite sums and at least one reading a run, got ${JSON.stringify(row)}`,
    );
  }
}
