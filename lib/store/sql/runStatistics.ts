import { noiseTable, weightSql } from './noiseVariances';
import { quoted } from './quoted';

/**
 * Readings of the model with their sister group, x in 10,000 run hours, y in mm and weight w, up to $1 (YYYY-MM-DD).
 *
 * @param groupTable table of the sister group of each unit: unit, group
 */
export function weightedReadingsSql(groupTable: string): string {
  return `SELECT g."group", r.series, r.unit, r.run, r.run_hours / 10000 AS x, r.value_mm AS y,
      ${weightSql('r.interval_variance')} AS w,
      r.overhaul, r.date, r.stage, r.unit_hours, r.line
    FROM run_readings r JOIN ${groupTable} g USING (unit)
    LEFT JOIN ${noiseTable(groupTable)} n ON n.group_name = g."group" AND n.series = r.series
    WHERE r.date <= $1::DATE`;
}

/** Name of the table of run statistics of a grouping. */
export function statisticsTable(groupTable: string): string {
  return `statistics_of_${groupTable}`;
}

/** Series with readings up to a day (YYYY-MM-DD), and whether interval readings are among them, in order. */
export function seriesOfReadingsSql(asOf: string): string {
  return `SELECT series::VARCHAR AS series, coalesce(max(interval_variance) > 0, false)::INTEGER AS weighted
    FROM run_readings WHERE date <= ${quoted(asOf)}::DATE GROUP BY ALL ORDER BY 1`;
}

/**
 * Makes the table of the sufficient statistics of every run of one series up to a day (YYYY-MM-DD): count, weights, means and
 * centred sums, x in 10,000 run hours and y in mm. Runs with interval readings are weighed by `weighRunsSql` afterwards.
 *
 * Only joined to its group when it is one row a run, since there are some twenty readings to a run and a name to each. One
 * series at a time, so that the first is fitted while the database counts the next.
 */
export function createRunStatisticsSql(groupTable: string, asOf: string, series: string): string {
  return `CREATE OR REPLACE TABLE ${statisticsTable(groupTable)} AS
    SELECT g."group", r.* FROM (
      SELECT unit, run, count(*)::DOUBLE AS count, count(*)::DOUBLE AS n, 0::DOUBLE AS log_weight_sum,
        avg(run_hours / 10000) AS mean_x, avg(value_mm) AS mean_y, min(run_hours) / 10000 AS min_x, max(run_hours) / 10000 AS max_x,
        (max(interval_variance) > 0)::DOUBLE AS weighted, regr_sxx(value_mm, run_hours / 10000) AS sxx_c,
        regr_sxy(value_mm, run_hours / 10000) AS sxy_c, regr_syy(value_mm, run_hours / 10000) AS syy_c
      FROM run_readings WHERE series = ${quoted(series)} AND date <= ${quoted(asOf)}::DATE GROUP BY unit, run) r
    JOIN ${groupTable} g USING (unit)`;
}

/**
 * Weighs the runs of the series that have interval readings: such a reading has weight s^2 / (s^2 + (upper - lower)^2 / 12), s
 * from the grouping's table of noise variances; the other readings have weight 1.
 */
export function weighRunsSql(groupTable: string, asOf: string, series: string): string {
  return `UPDATE ${statisticsTable(groupTable)} t SET n = s.n, log_weight_sum = s.log_weight_sum, mean_x = s.mean_x, mean_y = s.mean_y,
      sxx_c = s.sxx_c, sxy_c = s.sxy_c, syy_c = s.syy_c
    FROM (
      WITH uneven AS (
        SELECT w.* FROM (${weightedReadingsSql(groupTable).replace('$1', quoted(asOf))} AND r.series = ${quoted(series)}) w
        SEMI JOIN (SELECT unit, run FROM ${statisticsTable(groupTable)} WHERE weighted > 0) u ON u.unit = w.unit AND u.run = w.run),
      means AS (
        SELECT unit, run, sum(w) AS n, sum(ln(w)) AS log_weight_sum, sum(w * x) / sum(w) AS mean_x, sum(w * y) / sum(w) AS mean_y
        FROM uneven GROUP BY unit, run)
      SELECT m.unit, m.run, m.n, m.log_weight_sum, m.mean_x, m.mean_y, sum(w.w * pow(w.x - m.mean_x, 2)) AS sxx_c,
        sum(w.w * (w.x - m.mean_x) * (w.y - m.mean_y)) AS sxy_c, sum(w.w * pow(w.y - m.mean_y, 2)) AS syy_c
      FROM means m JOIN uneven w ON w.unit = m.unit AND w.run = m.run GROUP BY ALL) s
    WHERE t.unit = s.unit AND t.run = s.run`;
}

/** Units of the series in the table with their group and the number of their runs, in order of group and unit. */
export function seriesUnitsSql(groupTable: string): string {
  return `SELECT "group", unit, count(*)::DOUBLE AS runs FROM ${statisticsTable(groupTable)}
    GROUP BY "group", unit ORDER BY "group", unit`;
}

/** Runs of the series in the table, in order of group, unit and run. */
export function seriesRunsSql(groupTable: string): string {
  return `SELECT run::DOUBLE AS run, count::DOUBLE AS count, n, log_weight_sum, mean_x, mean_y, sxx_c, sxy_c, syy_c, min_x, max_x,
      weighted::DOUBLE AS weighted
    FROM ${statisticsTable(groupTable)} ORDER BY "group", unit, run`;
}

/** Readings of one group ($2) and series ($3) up to $1, in the order of its runs, for the checks of its fit. */
export function groupReadingsSql(groupTable: string): string {
  return `SELECT x::DOUBLE AS x, y::DOUBLE AS y, w::DOUBLE AS weight
    FROM (${weightedReadingsSql(groupTable)}) WHERE "group" = $2 AND series = $3 ORDER BY unit, run, x, y`;
}
