import { quoted } from './quoted';

/** Name of the table of noise variances of a grouping. */
export function noiseTable(groupTable: string): string {
  return `noise_of_${groupTable}`;
}

/** Table of the noise variance (mm squared) of groups that weigh interval readings; empty at first. */
export function createNoiseVariancesSql(groupTable: string): string {
  return `CREATE OR REPLACE TABLE ${noiseTable(groupTable)} (group_name VARCHAR, series VARCHAR, variance DOUBLE)`;
}

/** Adds the noise variance of one group and series. */
export function addNoiseVarianceSql(
  groupTable: string,
  group: string,
  series: string,
  variance_mm2: number,
): string {
  return `INSERT INTO ${noiseTable(groupTable)} VALUES (${quoted(group)}, ${quoted(series)}, ${variance_mm2})`;
}
