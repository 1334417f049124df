import { noiseTable, weightSql } from './noiseVariances';

/** Order of the overhauls of a grouping: by sister group and unit, each unit's as they were made. */
const inOrder = 'g."group", o.unit, o.unit_hours, o.date, o.overhaul';

/** Every overhaul, by sister group and unit, each unit's in the order in which they were made: their places are counted from 0. */
export function overhaulsInOrderSql(groupTable: string): string {
  return `SELECT g."group", o.unit, o.overhaul, CAST(o.date AS VARCHAR) AS date, CAST(o.unit_hours AS DOUBLE) AS unit_hours,
      coalesce(o.workshop, '') AS workshop
    FROM overhauls o JOIN ${groupTable} g USING (unit) ORDER BY ${inOrder}`;
}

/**
 * Every reading of the model up to $1 (YYYY-MM-DD) with the place of its overhaul, see overhaulsInOrderSql: by sister group, series
 * and unit, in the order in which they were taken, at one overhaul as found before as left. x in 10,000 run hours, y in mm.
 *
 * Series are told by their place in `seriesInOrderSql`, and all but the line is sorted by one whole number (20 bits of group, 11 of
 * series, 31 of overhaul, 1 of stage), since a fleet has millions of readings.
 */
export function readingsInOrderSql(groupTable: string): string {
  return `WITH places AS (
      SELECT o.id, g."group", dense_rank() OVER (ORDER BY g."group")::BIGINT AS group_place, row_number() OVER (ORDER BY ${inOrder}) - 1 AS place
      FROM overhauls o JOIN ${groupTable} g USING (unit))
    SELECT enum_code(r.series)::DOUBLE AS series, p.place::DOUBLE AS place, r.run::DOUBLE AS run, CAST(r.run_hours / 10000 AS DOUBLE) AS x, r.value_mm::DOUBLE AS y,
      CAST(${weightSql('r.interval_variance')} AS DOUBLE) AS weight, (r.stage = 'left')::DOUBLE AS is_left
    FROM run_readings r JOIN places p ON p.id = r.overhaul_id
    LEFT JOIN ${noiseTable(groupTable)} n ON n.group_name = p."group" AND n.series = r.series
    WHERE r.date <= $1::DATE
    ORDER BY (((p.group_place << 11) + enum_code(r.series)) << 32) + 2 * p.place + enum_code(r.stage), r.line`;
}

/** Names of all series in their order, whose places are counted from 0. */
export const seriesInOrderSql = 'SELECT unnest(enum_range(NULL::series_name))::VARCHAR AS series';
