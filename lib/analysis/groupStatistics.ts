import type { RunReadings } from '../stats/wear/RunReadings';
import type { WearStatistics } from '../stats/wear/types';
import { type RunSums, wearStatisticsFromColumns } from '../stats/wear/wearStatisticsFromColumns';
import type { Connector } from '../store/Connector';
import { type ColumnKinds, queryColumns } from '../store/queryColumns';
import { groupReadingsSql, seriesRunsSql, seriesUnitsSql } from '../store/sql/runStatistics';

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
  weighted: 'number',
} as const satisfies ColumnKinds;

/** Sufficient statistics of one sister group and series. */
export interface GroupStatistics {
  readonly group: string;
  /** Runs are named by their number, 0 for the one from new. */
  readonly statistics: WearStatistics;
  readonly weighted: boolean;
}

/** Sufficient statistics of every sister group of the series that the grouping's table of run statistics holds, in order of group. */
export async function seriesStatistics(
  connector: Connector,
  groupTable: string,
): Promise<readonly GroupStatistics[]> {
  const unitKinds = { group: 'text', unit: 'text', runs: 'number' } as const;
  const units = await queryColumns(connector, seriesUnitsSql(groupTable), unitKinds);
  const { run, weighted, ...sums } = await queryColumns(connector, seriesRunsSql(groupTable), runKinds);
  const groups: GroupStatistics[] = [];
  let [unit, firstRun] = [0, 0];
  while (unit < units.group.length) {
    const group = units.group[unit] as string;
    const end = endOf(units.group, unit);
    const runsOfUnit = units.runs.slice(unit, end);
    const endRun = firstRun + runsOfUnit.reduce((sum, runs) => sum + runs, 0);
    const statistics = wearStatisticsFromColumns(
      units.unit.slice(unit, end),
      runsOfUnit,
      Array.from(run.subarray(firstRun, endRun), String),
      stretchOf(sums, firstRun, endRun),
    );
    groups.push({ group, statistics, weighted: weighted.subarray(firstRun, endRun).includes(1) });
    [unit, firstRun] = [end, endRun];
  }
  return groups;
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

/** Copies: a stretch of a longer column would go to another thread with the whole of it. */
function stretchOf(sums: RunSums, from: number, to: number): RunSums {
  const cut = Object.entries(sums).map(([name, column]) => [name, column.slice(from, to)]);
  return Object.fromEntries(cut) as RunSums;
}

/** Place after the last of equal texts that follow each other. */
function endOf(texts: readonly string[], from: number): number {
  let end = from + 1;
  while (end < texts.length && texts[end] === texts[from]) end += 1;
  return end;
}
