/**
 * Held rows and cells by unit: how many, of how many different reasons, and the one met most often (the last in the alphabet of
 * several). A reading belongs to the unit of its overhaul; unit is null where none can be told or no such unit is known.
 */
export const heldByUnitSql = `
  WITH opening AS (SELECT overhaul, any_value(unit) AS unit FROM raw_overhauls GROUP BY overhaul),
  line_unit AS (SELECT file, line, any_value(unit) AS unit FROM raw_overhauls GROUP BY file, line),
  reading_unit AS (
    SELECT h.file, h.line, any_value(o.unit) AS unit FROM held_readings h JOIN opening o ON o.overhaul = h.overhaul GROUP BY h.file, h.line),
  held AS (
    SELECT u.unit, p.reason, count(*) AS n FROM problems p
    LEFT JOIN line_unit l ON l.file = p.file AND l.line = p.line
    LEFT JOIN reading_unit r ON r.file = p.file AND r.line = p.line
    LEFT JOIN units u ON u.unit = coalesce(l.unit, r.unit)
    WHERE p.action = 'held' GROUP BY u.unit, p.reason)
  SELECT CAST(unit AS VARCHAR) AS unit, sum(n)::INTEGER AS held, count(*)::INTEGER AS reasons, arg_max(reason, (n, reason)) AS reason
  FROM held GROUP BY unit ORDER BY unit NULLS LAST`;

/** First day with an overhaul on record. */
export const firstDateSql = 'SELECT CAST(min(date) AS VARCHAR) AS day FROM overhauls';
