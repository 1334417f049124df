import type { WearRow, WearStatistics } from './types';
import { type RunSums, wearStatisticsFromColumns } from './wearStatisticsFromColumns';

/**
 * Sufficient statistics of the wear model from runs already summed, one row each: see wearStatisticsFromColumns.
 *
 * Units and runs keep the order in which they first appear. Throws if a number is not finite, a weight sum or count is not
 * positive, or a run comes twice.
 */
export function wearStatisticsFromRows(rows: Iterable<WearRow>): WearStatistics {
  const byUnit = groupByUnit(rows);
  const ordered = [...byUnit.values()].flat();
  return wearStatisticsFromColumns(
    [...byUnit.keys()],
    Array.from(byUnit.values(), (runs) => runs.length),
    ordered.map((row) => row.run),
    runSumsOf(ordered),
  );
}

/** Rows of runs as columns, in their order. */
export function runSumsOf(rows: readonly WearRow[]): RunSums {
  const column = (value: (row: WearRow) => number) => Float64Array.from(rows, value);
  return {
    count: column((row) => row.count),
    n: column((row) => row.n),
    log_weight_sum: column((row) => row.log_weight_sum ?? 0),
    mean_x: column((row) => row.mean_x),
    mean_y: column((row) => row.mean_y),
    sxx_c: column((row) => row.sxx_c),
    sxy_c: column((row) => row.sxy_c),
    syy_c: column((row) => row.syy_c),
    min_x: column((row) => row.min_x),
    max_x: column((row) => row.max_x),
  };
}

function groupByUnit(rows: Iterable<WearRow>): Map<string, WearRow[]> {
  const byUnit = new Map<string, WearRow[]>();
  const seen = new Set<string>();
  for (const row of rows) {
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
