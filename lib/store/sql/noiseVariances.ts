import { quoted } from './quoted';

/** Name of the table of noise variances of a grouping. */
export function noiseTable(groupTable: string): string {
  return `noise_of_${groupTable}`;
}

/** Table of the noise variance (mm squared) of groups that weigh interval readings; empty at first. */
export function createNoiseVariancesSql(groupTable: string): string {
  return `CREATE OR REPLACE TABLE ${noiseTable(groupTable)} (group_name VARCHAR, series VARCHAR, variance DOUBLE)`;
}

/** Weight s^2 / (s^2 + variance) of a reading with a spread of its own, s from the row n of the noise table or 0.01 mm; else 1. */
export function weightSql(variance: string): string {
  return `CASE WHEN ${variance} > 0 THEN coalesce(n.variance, 0.0001) / (coalesce(n.variance, 0.0001) + ${variance}) ELSE 1 END`;
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
