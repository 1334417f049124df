import type { Connector } from '../store/Connector';
import { createRunStatisticsSql, weighRunsSql } from '../store/sql/runStatistics';
import { createRunSumsSql, seriesOfRunSumsSql } from '../store/sql/runSums';

/** Statements that make the view of run statistics of a table of sister groups, one series at a time: see createRunStatisticsSql. */
export interface RunStatements {
  /** Series with runs, and whether readings of different spread are among them (0 or 1), in order: series, weighted. */
  readonly seriesSql: string;
  createSql(groupTable: string, series: string): string;
  /** Weighs the runs that have interval readings by the noise variances as they stand. */
  weighSql(groupTable: string, series: string): string;
}

/** Where the statistics of runs come from: makes everything ready in the store for statements about runs up to a day. */
export type RunSource = (connector: Connector, asOf: string) => Promise<RunStatements>;

/** Runs of the readings in the store. */
export const runsInStore: RunSource = async (connector, asOf) => {
  await connector.run(createRunSumsSql(asOf));
  return {
    seriesSql: seriesOfRunSumsSql(asOf),
    createSql: (groupTable, series) => createRunStatisticsSql(groupTable, asOf, series),
    weighSql: (groupTable, series) => weighRunsSql(groupTable, asOf, series),
  };
};
