import { z } from 'zod';
import { fitWear } from '../stats/wear/fitWear';
import { noForecastReason } from '../stats/wear/noForecastReason';
import type { Connector } from '../store/Connector';
import { addNoiseVarianceSql } from '../store/sql/noiseVariances';
import { type GroupStatistics, seriesStatistics } from './groupStatistics';
import type { RunStatements } from './RunSource';

/** A series with runs; weighted is 1 where readings of different spread are among them. */
export const seriesOfRuns = z.object({ series: z.string(), weighted: z.number() });
export type SeriesOfRuns = z.output<typeof seriesOfRuns>;

/**
 * Statistics of the runs of one series by sister group; where there are interval readings, weighed by the noise of their own
 * group, which joins the grouping's table of noise variances (that table is there).
 */
export async function weighedStatistics(
  connector: Connector,
  groupTable: string,
  runs: RunStatements,
  { series, weighted }: SeriesOfRuns,
): Promise<readonly GroupStatistics[]> {
  await connector.run(runs.createSql(groupTable, series));
  if (weighted === 0) return seriesStatistics(connector, groupTable);
  await connector.run(runs.weighSql(groupTable, series));
  const first = await seriesStatistics(connector, groupTable);
  if (!(await addNoise(connector, groupTable, series, first))) return first;
  await connector.run(runs.weighSql(groupTable, series));
  return seriesStatistics(connector, groupTable);
}

/** Adds the noise of groups that weigh interval readings; whether there is any. */
async function addNoise(
  connector: Connector,
  groupTable: string,
  series: string,
  groups: readonly GroupStatistics[],
): Promise<boolean> {
  let any = false;
  for (const { group, statistics, weighted } of groups) {
    if (!weighted || noForecastReason(statistics) !== null) continue;
    const variance = fitWear(statistics).sdNoise_mm ** 2;
    if (variance <= 0) continue;
    await connector.run(addNoiseVarianceSql(groupTable, group, series, variance));
    any = true;
  }
  return any;
}
