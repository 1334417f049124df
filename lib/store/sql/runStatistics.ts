import { noiseTable, weightSql } from './noiseVariances';
import { quoted } from './quoted';
import { runSumsTable } from './runSums';

/**
 * Readings of the model with their sister group, x in 10,000 run hours, y in mm and weight w, up to $1 (YYYY-MM-DD).
 *
 * @param groupTable table of the sister group of each unit: unit, group
 */
export function weightedReadingsSql(groupTable: string): string {
  return `SELECT g."group", g.place, r.series, r.unit, r.run, r.run_hours / 10000 AS x, r.value_mm AS y,
      ${weightSql('r.interval_variance')} AS w,
      r.overhaul, r.date, r.stage, r.unit_hours, r.line
    FROM run_readings r JOIN ${groupTable} g USING (unit)
    LEFT JOIN ${noiseTable(groupTable)} n ON n.group_name = g."group" AND n.series = r.series
    WHERE r.date <= $1::DATE`;
}

/** Name of the view of run statistics of a grouping, of one series at a time. */
export function statisticsTable(groupTable: string): string {
  return `statistics_of_${groupTable}`;
}

/**
 * Makes the view of the sufficient statistics of every run of one series up to a day (YYYY-MM-DD): count, weights, means and
 * centred sums, x in 10,000 run hours and y in mm, from the sums of runs of that day. Runs with interval readings are weighed by
 * `weighRunsSql` afterwards. A unit is told by its place, see writeGroups.
 */
export function createRunStatisticsSql(groupTable: string, asOf: string, series: string): string {
  return `CREATE OR REPLACE VIEW ${statisticsTable(groupTable)} AS ${evenRunsSql(groupTable, asOf, series)}`;
}

/** Runs of the series, every reading of weight 1. */
function evenRunsSql(groupTable: string, asOf: string, series: string): string {
  return `SELECT g.place, r.run, r.count, r.count AS n, 0::DOUBLE AS log_weight_sum, r.mean_x, r.mean_y, r.sxx_c, r.sxy_c, r.syy_c, r.min_x, r.max_x, r.weighted
    FROM ${runSumsTable(asOf)} r JOIN ${groupTable} g USING (unit_id) WHERE r.series = ${quoted(series)}`;
}

/**
 * Weighs the runs of the series that have interval readings: such a reading has weight s^2 / (s^2 + (upper - lower)^2 / 12), s
 * from the grouping's table of noise variances; the other readings have weight 1.
 */
export function weighRunsSql(groupTable: string, asOf: string, series: string): string {
  const weighed = `weighed_${statisticsTable(groupTable)}`;
  const changed = ['n', 'log_weight_sum', 'mean_x', 'mean_y', 'sxx_c', 'sxy_c', 'syy_c'];
  return `CREATE OR REPLACE TABLE ${weighed} AS
    WITH even AS (${evenRunsSql(groupTable, asOf, series)}),
      uneven AS (
        SELECT w.* FROM (${weightedReadingsSql(groupTable).replace('$1', quoted(asOf))} AND r.series = ${quoted(series)}) w
        SEMI JOIN (SELECT place, run FROM even WHERE weighted > 0) u ON u.place = w.place AND u.run = w.run),
      means AS (
        SELECT place, run, sum(w) AS n, sum(ln(w)) AS log_weight_sum, sum(w * x) / sum(w) AS mean_x, sum(w * y) / sum(w) AS mean_y
        FROM uneven GROUP BY place, run),
      sums AS (
        SELECT m.place, m.run, m.n, m.log_weight_sum, m.mean_x, m.mean_y, sum(w.w * pow(w.x - m.mean_x, 2)) AS sxx_c,
          sum(w.w * (w.x - m.mean_x) * (w.y - m.mean_y)) AS sxy_c, sum(w.w * pow(w.y - m.mean_y, 2)) AS syy_c
        FROM means m JOIN uneven w ON w.place = m.place AND w.run = m.run GROUP BY ALL)
    SELECT e.* REPLACE (${changed.map((name) => `coalesce(s.${name}, e.${name}) AS ${name}`).join(', ')})
    FROM even e LEFT JOIN sums s ON s.place = e.place AND s.run = e.run;
  CREATE OR REPLACE VIEW ${statisticsTable(groupTable)} AS FROM ${weighed}`;
}

/** Units of a grouping with their group, in the order of their places, which are counted from 0. */
export function unitsInOrderSql(groupTable: string): string {
  return `SELECT "group", unit FROM ${groupTable} ORDER BY place`;
}

/** Runs of the series in the view, in order of the places of their units and of run. */
export function seriesRunsSql(groupTable: string): string {
  return `SELECT place::DOUBLE AS place, run::DOUBLE AS run, count::DOUBLE AS count, n, log_weight_sum, mean_x, mean_y, sxx_c, sxy_c, syy_c,
      min_x, max_x, weighted::DOUBLE AS weighted
    FROM ${statisticsTable(groupTable)} ORDER BY place, run`;
}

/** Readings of one group ($2) and series ($3) up to $1, in the order of its runs, for the checks of its fit. */
export function groupReadingsSql(groupTable: string): string {
  return `SELECT x::DOUBLE AS x, y::DOUBLE AS y, w::DOUBLE AS weight
    FROM (${weightedReadingsSql(groupTable)}) WHERE "group" = $2 AND series = $3 ORDER BY unit, run, x, y`;
}
