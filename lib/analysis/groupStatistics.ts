import type { RunReadings } from '../stats/wear/RunReadings';
import type { WearStatistics } from '../stats/wear/types';
import { type RunSums, wearStatisticsFromColumns } from '../stats/wear/wearStatisticsFromColumns';
import type { Connector } from '../store/Connector';
import { type ColumnKinds, queryColumns } from '../store/queryColumns';
import { groupReadingsSql, seriesRunsSql, unitsInOrderSql } from '../store/sql/runStatistics';

const runKinds = {
  place: 'number',
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

/** Sufficient statistics of every sister group of the series that the grouping's view of run statistics shows, in order of group. */
export async function seriesStatistics(
  connector: Connector,
  groupTable: string,
): Promise<readonly GroupStatistics[]> {
  const units = await queryColumns(connector, unitsInOrderSql(groupTable), { group: 'text', unit: 'text' });
  const runs = await queryColumns(connector, seriesRunsSql(groupTable), runKinds);
  const { place, run, weighted, ...sums } = runs;
  const groups: GroupStatistics[] = [];
  for (let start = 0, end = 0; start < run.length; start = end) {
    const group = units.group[place[start] as number] as string;
    const unitNames: string[] = [];
    const runsOfUnit: number[] = [];
    while (end < run.length && units.group[place[end] as number] === group) {
      const ofUnit = endOf(place, end);
      unitNames.push(units.unit[place[end] as number] as string);
      runsOfUnit.push(ofUnit - end);
      end = ofUnit;
    }
    const statistics = wearStatisticsFromColumns(
      unitNames,
      runsOfUnit,
      Array.from(run.subarray(start, end), String),
      stretchOf(sums, start, end),
    );
    groups.push({ group, statistics, weighted: weighted.subarray(start, end).includes(1) });
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

/** Place after the last of equal numbers that follow each other. */
function endOf(numbers: Float64Array, from: number): number {
  let end = from + 1;
  while (end < numbers.length && numbers[end] === numbers[from]) end += 1;
  return end;
}
