import { quoted } from './quoted';

/** Table of the noise variance (mm squared) of groups that weigh interval readings; empty at first. */
export const createNoiseVariancesSql =
  'CREATE OR REPLACE TABLE noise_variances (group_name VARCHAR, series VARCHAR, variance DOUBLE)';

/** Adds the noise variance of one group and series. */
export function addNoiseVarianceSql(group: string, series: string, variance_mm2: number): string {
  return `INSERT INTO noise_variances VALUES (${quoted(group)}, ${quoted(series)}, ${variance_mm2})`;
}
