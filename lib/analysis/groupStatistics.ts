import type { RunReadings } from '../stats/wear/RunReadings';
import type { WearStatistics } from '../stats/wear/types';
import { wearStatisticsFromColumns } from '../stats/wear/wearStatisticsFromColumns';
import type { Connector } from '../store/Connector';
import { type ColumnKinds, queryColumns } from '../store/queryColumns';
import { groupReadingsSql, groupRunsSql, groupUnitsSql } from '../store/sql/runStatistics';

const runKinds = {
  run: 'number',
  count: 'number',
  n: 'number',
  log_weight_sum: 'number',
  mean_x: 'number',
  mean_y: 'number',
  sxx_c: 'number',
  sxy_c: 'number',
  syy_c: 'number',
  min_x: 'number',
  max_x: 'number',
} as const satisfies ColumnKinds;

/** Sufficient statistics of one sister group and series; runs are named by their number, 0 for the one from new. */
export async function groupStatistics(
  connector: Connector,
  groupTable: string,
  group: string,
  series: string,
): Promise<WearStatistics> {
  const of = [group, series];
  const units = await queryColumns(
    connector,
    groupUnitsSql(groupTable),
    { unit: 'text', runs: 'number' },
    of,
  );
  const { run, ...sums } = await queryColumns(connector, groupRunsSql(groupTable), runKinds, of);
  return wearStatisticsFromColumns(units.unit, units.runs, Array.from(run, String), sums);
}

/** Readings up to the day (YYYY-MM-DD) of the statistics of a group and series, in their order. */
export function groupReadings(
  connector: Connector,
  groupTable: string,
  asOf: string,
  group: string,
  series: string,
): Promise<RunReadings> {
  const kinds = { x: 'number', y: 'number', weight: 'number' } as const;
  return queryColumns(connector, groupReadingsSql(groupTable), kinds, [asOf, group, series]);
}
