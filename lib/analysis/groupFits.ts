import { max } from 'd3-array';
import { z } from 'zod';
import { fitCheckSentences, fitChecks } from '../stats/wear/fitChecks';
import { fitWear } from '../stats/wear/fitWear';
import { integrateWear } from '../stats/wear/integrateWear';
import { noForecastReason } from '../stats/wear/noForecastReason';
import type { WearFit, WearPosterior, WearReading, WearStatistics } from '../stats/wear/types';
import { wearStatisticsFromRows } from '../stats/wear/wearStatisticsFromRows';
import type { Connector } from '../store/Connector';
import { queryRows } from '../store/queryRows';
import { addNoiseVarianceSql, createNoiseVariancesSql } from '../store/sql/noiseVariances';
import { groupReadingsSql, runStatisticsSql } from '../store/sql/runStatistics';
import type { FitRow } from './types';

/** A sister group's series with everything that its forecasts are made from. */
export interface GroupFit {
  readonly row: FitRow;
  readonly statistics: WearStatistics;
  readonly posterior: WearPosterior | null;
  readonly fit: WearFit | null;
  readonly unitIndex: ReadonlyMap<string, number>;
  readonly runIndex: ReadonlyMap<string, number>;
}

const runRow = z.object({
  group: z.string(),
  series: z.string(),
  unit: z.string(),
  run: z.number(),
  count: z.number(),
  n: z.number(),
  log_weight_sum: z.number(),
  mean_x: z.number(),
  mean_y: z.number(),
  sxx_c: z.number(),
  sxy_c: z.number(),
  syy_c: z.number(),
  min_x: z.number(),
  max_x: z.number(),
  weighted: z.number(),
});
type RunRow = z.output<typeof runRow>;

const readingRow = z.object({
  unit: z.string(),
  run: z.number(),
  x: z.number(),
  y: z.number(),
  weight: z.number(),
});

/** Name of a run: its unit and its number, 0 for the one from new. */
export function runName(unit: string, run: number): string {
  return `${unit} run ${run}`;
}

/** Key of a group's series. */
export function groupKey(group: string, series: string): string {
  return `${group}\u0000${series}`;
}

/**
 * Fits the wear model to every sister group and series on the day.
 *
 * Interval readings are weighted by the group's own noise: such groups are fitted twice, first with a noise of 0.01 mm.
 *
 * @param groupTable table of the sister group of each unit: unit, group
 * @param onGroup called before each fit with its name and the share done
 */
export async function groupFits(
  connector: Connector,
  asOf: string,
  groupTable: string,
  onGroup: (name: string, share: number) => Promise<void>,
): Promise<ReadonlyMap<string, GroupFit>> {
  await connector.run(createNoiseVariancesSql(groupTable));
  const sql = runStatisticsSql(groupTable);
  const first = byGroup(await queryRows(connector, sql, runRow, [asOf]));
  const weighted = await noiseOfWeightedGroups(connector, groupTable, first);
  const groups = weighted ? byGroup(await queryRows(connector, sql, runRow, [asOf])) : first;
  const fits = new Map<string, GroupFit>();
  for (const [key, rows] of groups) {
    const { group, series } = rows[0] as RunRow;
    await onGroup(`${group}, ${series.replaceAll('_', ' ')}`, fits.size / groups.size);
    const readings = await queryRows(connector, groupReadingsSql(groupTable), readingRow, [
      asOf,
      group,
      series,
    ]);
    fits.set(
      key,
      groupFit(
        group,
        series,
        rows,
        readings.map((reading) => ({ ...reading, run: runName(reading.unit, reading.run) })),
      ),
    );
  }
  return fits;
}

function byGroup(rows: readonly RunRow[]): ReadonlyMap<string, readonly RunRow[]> {
  const groups = new Map<string, RunRow[]>();
  for (const row of rows) {
    const key = groupKey(row.group, row.series);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}

async function noiseOfWeightedGroups(
  connector: Connector,
  groupTable: string,
  groups: ReadonlyMap<string, readonly RunRow[]>,
): Promise<boolean> {
  let any = false;
  for (const rows of groups.values()) {
    if (!rows.some((row) => row.weighted === 1)) continue;
    const statistics = statisticsOf(rows);
    if (noForecastReason(statistics) !== null) continue;
    const { group, series } = rows[0] as RunRow;
    const variance = fitWear(statistics).sdNoise_mm ** 2;
    if (variance <= 0) continue;
    await connector.run(addNoiseVarianceSql(groupTable, group, series, variance));
    any = true;
  }
  return any;
}

function statisticsOf(rows: readonly RunRow[]): WearStatistics {
  return wearStatisticsFromRows(rows.map((row) => ({ ...row, run: runName(row.unit, row.run) })));
}

function groupFit(
  group: string,
  series: string,
  rows: readonly RunRow[],
  readings: readonly WearReading[],
): GroupFit {
  const statistics = statisticsOf(rows);
  const reason = noForecastReason(statistics);
  const fit = reason === null ? fitWear(statistics) : null;
  const posterior = fit === null ? null : integrateWear(statistics);
  const checks =
    fit === null || posterior === null
      ? []
      : fitCheckSentences(fitChecks(statistics, fit, posterior, readings));
  const row: FitRow = {
    group,
    series,
    runs: rows.length,
    units: statistics.unitNames.length,
    readings: statistics.readings,
    intercept_mm: fit?.intercept_mm ?? null,
    slope_mm_per_10kh: fit?.slope_mm_per_10kh ?? null,
    sdNoise_mm: fit?.sdNoise_mm ?? null,
    sdStart_mm: fit === null ? null : Math.hypot(fit.sdStartUnit_mm, fit.sdStartRun_mm),
    sdSlopeUnit_mm_per_10kh: fit?.sdSlopeUnit_mm_per_10kh ?? null,
    sdSlopeRun_mm_per_10kh: fit?.sdSlopeRun_mm_per_10kh ?? null,
    remlCriterion: fit?.remlCriterion ?? null,
    boundary: fit?.boundary ?? [],
    converged: fit?.converged ?? false,
    checks,
    observedRunHours: (max(rows, (run) => run.max_x) ?? 0) * 10_000,
    reason,
  };
  const unitIndex = new Map(statistics.unitNames.map((name, index) => [name, index]));
  const runIndex = new Map(statistics.runNames.map((name, index) => [name, index]));
  return { row, statistics, posterior, fit, unitIndex, runIndex };
}
