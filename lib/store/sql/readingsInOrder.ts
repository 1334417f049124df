import { weightedReadingsSql } from './runStatistics';

/**
 * Every reading of the model up to $1 (YYYY-MM-DD) with its overhaul, by sister group, series and unit, in the order in
 * which they were taken: at one overhaul as found before as left.
 */
export function readingsInOrderSql(groupTable: string): string {
  return `SELECT r."group", r.series, r.unit, r.run::INTEGER AS run, r.x::DOUBLE AS x, r.y::DOUBLE AS y, r.w::DOUBLE AS weight,
      r.overhaul, CAST(r.date AS VARCHAR) AS date, r.stage, CAST(r.unit_hours AS DOUBLE) AS unit_hours, o.workshop
    FROM (${weightedReadingsSql(groupTable)}) r JOIN overhauls o USING (overhaul)
    ORDER BY r."group", r.series, r.unit, r.unit_hours, r.date, r.overhaul, r.stage, r.line`;
}
