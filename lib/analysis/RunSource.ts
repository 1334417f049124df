import type { Connector } from '../store/Connector';
import { createRunStatisticsSql, weighRunsSql } from '../store/sql/runStatistics';

/** Statements that make the table of run statistics of a table of sister groups, see createRunStatisticsSql. */
export interface RunStatements {
  createSql(groupTable: string): string;
  /** Weighs the runs that have interval readings by the noise variances as they stand. */
  weighSql(groupTable: string): string;
}

/** Where the statistics of runs come from: makes everything ready in the store for statements about runs up to a day. */
export type RunSource = (connector: Connector, asOf: string) => Promise<RunStatements>;

/** Runs of the readings in the store. */
export const runsInStore: RunSource = async (_connector, asOf) => ({
  createSql: (groupTable) => createRunStatisticsSql(groupTable, asOf),
  weighSql: (groupTable) => weighRunsSql(groupTable, asOf),
});
