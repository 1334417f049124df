import { longestFirstRun_h, unknownStart } from '../../../store/sql/runs';

/**
 * Every overhaul of a table once for each rule of its unit's frame, with the run that a reading as found and one as left
 * belongs to and the unit hours at which it starts; $1 are the rules as JSON.
 *
 * Hours never fall, so a run starts at the first overhaul that has its number; one without hours leaves it unknown.
 */
export function cutSql(overhauls: string): string {
  return `
  rule AS (SELECT * FROM jsonb_to_recordset($1::jsonb) AS r("rule" integer, "frame" text, "partCodes" text[])),
  opening AS (
    SELECT o.unit, o.overhaul, o.date, o.unit_hours, r.frame, r.rule, cardinality(r."partCodes") > 0 AS by_part,
      cardinality(r."partCodes") = 0 OR regexp_split_to_array(btrim(coalesce(o.fitted, '')), '\\s*;\\s*') && r."partCodes" AS resets
    FROM ${overhauls} o JOIN units u USING (unit) JOIN rule r USING (frame)),
  counted AS (
    SELECT *, row_number() OVER history AS place, count(*) FILTER (WHERE resets) OVER history AS run_left FROM opening
    WINDOW history AS (PARTITION BY unit, rule ORDER BY date, unit_hours NULLS FIRST, overhaul ROWS UNBOUNDED PRECEDING)),
  started AS (
    SELECT *, CASE WHEN run_left = 0 THEN 0 ELSE
        first_value(coalesce(unit_hours, ${unknownStart})) OVER (PARTITION BY unit, rule, run_left ORDER BY place) END AS start_left
    FROM counted),
  cut AS (
    SELECT *, run_left - resets::integer AS run_found,
      coalesce(lag(start_left) OVER (PARTITION BY unit, rule ORDER BY place), 0) AS start_found,
      place = 1 AND NOT by_part AND unit_hours > ${longestFirstRun_h} AS is_late_first
    FROM started)`;
}

/** What every unit's cut comes to, by which it is compared with that of the overhauls beside the batch. */
export const historiesSql = `
  WITH ${cutSql('overhauls')}
  SELECT unit, count(*)::integer AS openings, sum(date - DATE '1970-01-01')::double precision AS days,
    coalesce(sum(unit_hours), 0) AS hours, coalesce(sum(run_left) FILTER (WHERE unit_hours IS NOT NULL), 0)::double precision AS runs,
    coalesce(sum(start_left) FILTER (WHERE unit_hours IS NOT NULL), 0) AS "startHours"
  FROM cut GROUP BY unit`;
