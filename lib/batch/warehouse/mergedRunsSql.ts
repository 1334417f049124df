import { noiseTable, weightSql } from '../../store/sql/noiseVariances';
import { quoted } from '../../store/sql/quoted';
import { statisticsColumns } from './Warehouse';

/** Table that the statistics of a warehouse are kept in, before readings of different spread are weighed. */
export const warehouseRuns = 'warehouse_runs';

/** Makes that table, empty. */
export const createWarehouseRunsSql = `
  CREATE OR REPLACE TABLE ${warehouseRuns} (${statisticsColumns
    .map((column) => `${column} ${column === 'unit' || column === 'series' ? 'VARCHAR' : 'DOUBLE'}`)
    .join(', ')})`;

/** Series of a warehouse's runs, and whether readings of different spread are among them, in order. */
export const seriesOfWarehouseSql = `SELECT series, coalesce(max(spread_mm2) > 0, false)::INTEGER AS weighted
  FROM ${warehouseRuns} GROUP BY ALL ORDER BY 1`;

/**
 * Statistics of every run of a series as createRunStatisticsSql shows them, from those of a warehouse: parts of a run with one spread have one
 * weight w, and are put together about their common mean, Sxx = sum of w (Sxx of the part + count (its mean - mean)^2).
 *
 * Source: Chan, Golub, LeVeque, Algorithms for computing the sample variance (1983), equation 2.1, with weights.
 *
 * @param groupTable table of the sister group of each unit: unit, group
 */
export function mergedRunsSql(groupTable: string, series: string): string {
  const product = (a: 'x' | 'y', b: 'x' | 'y') =>
    `sum(p.w * (p.s${a}${b}_c + p.count * (p.mean_${a} - m.mean_${a}) * (p.mean_${b} - m.mean_${b})))::DOUBLE AS s${a}${b}_c`;
  // A mean that is alone keeps its last bit.
  const mean = (of: string) =>
    `CASE WHEN count(*) = 1 THEN any_value(${of}) ELSE sum(w * count * ${of}) / sum(w * count) END AS ${of}`;
  return `
  WITH parts AS (
    SELECT g.place, r.*, ${weightSql('r.spread_mm2')} AS w FROM ${warehouseRuns} r JOIN ${groupTable} g USING (unit)
    LEFT JOIN ${noiseTable(groupTable)} n ON n.group_name = g."group" AND n.series = r.series
    WHERE r.series = ${quoted(series)}),
  means AS (
    SELECT place, run, sum(count) AS count, sum(w * count) AS n, sum(count * ln(w)) AS log_weight_sum,
      ${mean('mean_x')}, ${mean('mean_y')}, min(min_x) AS min_x,
      max(max_x) AS max_x, min(w) AS least_weight
    FROM parts GROUP BY ALL)
  SELECT m.place, m.run::INTEGER AS run, m.count::INTEGER AS count,
    m.n::DOUBLE AS n, m.log_weight_sum::DOUBLE AS log_weight_sum, m.mean_x::DOUBLE AS mean_x, m.mean_y::DOUBLE AS mean_y,
    m.min_x::DOUBLE AS min_x, m.max_x::DOUBLE AS max_x, (m.least_weight < 1)::INTEGER AS weighted,
    ${product('x', 'x')}, ${product('x', 'y')}, ${product('y', 'y')}
  FROM means m JOIN parts p ON p.place = m.place AND p.run = m.run
  GROUP BY ALL`;
}
