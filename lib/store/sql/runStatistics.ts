import { noiseTable } from './noiseVariances';

/**
 * Readings of the model with their sister group, x in 10,000 run hours, y in mm and weight w, up to $1 (YYYY-MM-DD).
 *
 * @param groupTable table of the sister group of each unit: unit, group
 */
export function weightedReadingsSql(groupTable: string): string {
  return `SELECT g."group", r.series, r.unit, r.run, r.run_hours / 10000 AS x, r.value_mm AS y,
      CASE WHEN r.interval_variance > 0 THEN coalesce(n.variance, 0.0001) / (coalesce(n.variance, 0.0001) + r.interval_variance) ELSE 1 END AS w,
      r.overhaul, r.date, r.stage, r.unit_hours, r.line
    FROM run_readings r JOIN ${groupTable} g USING (unit)
    LEFT JOIN ${noiseTable(groupTable)} n ON n.group_name = g."group" AND n.series = r.series
    WHERE r.date <= $1::DATE`;
}

/**
 * Sufficient statistics of every run up to $1 (YYYY-MM-DD): count, weights, means and centred sums, x in 10,000 run hours
 * and y in mm, in order of group, series, unit and run.
 *
 * An interval reading has weight s^2 / (s^2 + (upper - lower)^2 / 12), s from the grouping's table of noise variances; the other
 * readings have weight 1.
 *
 * @param groupTable table of the sister group of each unit: unit, group
 */
export function runStatisticsSql(groupTable: string): string {
  return `
  WITH weighted AS (${weightedReadingsSql(groupTable)}),
  means AS (
    SELECT "group", series, unit, run, count(*) AS count, sum(w) AS n, sum(ln(w)) AS log_weight_sum,
      sum(w * x) / sum(w) AS mean_x, sum(w * y) / sum(w) AS mean_y, min(x) AS min_x, max(x) AS max_x, min(w) AS least_weight
    FROM weighted GROUP BY ALL)
  SELECT m."group", m.series, m.unit, m.run::INTEGER AS run, m.count::INTEGER AS count,
    m.n::DOUBLE AS n, m.log_weight_sum::DOUBLE AS log_weight_sum, m.mean_x::DOUBLE AS mean_x, m.mean_y::DOUBLE AS mean_y,
    m.min_x::DOUBLE AS min_x, m.max_x::DOUBLE AS max_x, (m.least_weight < 1)::INTEGER AS weighted,
    sum(w.w * pow(w.x - m.mean_x, 2))::DOUBLE AS sxx_c, sum(w.w * (w.x - m.mean_x) * (w.y - m.mean_y))::DOUBLE AS sxy_c,
    sum(w.w * pow(w.y - m.mean_y, 2))::DOUBLE AS syy_c
  FROM means m JOIN weighted w ON w."group" = m."group" AND w.series = m.series AND w.unit = m.unit AND w.run = m.run
  GROUP BY ALL ORDER BY 1, 2, 3, 4`;
}

/** Readings of one group ($2) and series ($3) up to $1, for the checks of its fit. */
export function groupReadingsSql(groupTable: string): string {
  return `SELECT unit, run::INTEGER AS run, x::DOUBLE AS x, y::DOUBLE AS y, w::DOUBLE AS weight
    FROM (${weightedReadingsSql(groupTable)}) WHERE "group" = $2 AND series = $3 ORDER BY unit, run, x, y`;
}
