/** Above these hours at a unit's first known opening, earlier openings are missing from the files. */
export const longestFirstRun_h = 20_000;

/** Stands for the unknown start of a run that a held overhaul began; hours are never negative. */
export const unknownStart = -1;

const lastReset = `CASE WHEN resets THEN CASE WHEN lost THEN ${unknownStart} ELSE unit_hours END END`;

/**
 * What resets a series. The rule belongs to frame and characteristic: 'assembly' (every overhaul) unless limits.reset_by or
 * parts.resets name parts.
 */
export const resetRulesSql = `
  CREATE TABLE series_of AS
    SELECT characteristic, unnest(CASE WHEN shape = 'single' THEN [characteristic]
      ELSE [characteristic || '_largest', characteristic || '_smallest', characteristic || '_mean', characteristic || '_offset'] END) AS series
    FROM all_characteristics;
  CREATE TABLE reset_rules AS
    WITH named AS (
      SELECT l.frame, s.characteristic, trim(unnest(string_split(l.reset_by, ';'))) AS code FROM limits l JOIN series_of s USING (series)
      UNION SELECT p.frame, s.characteristic, p.part FROM
        (SELECT frame, part, trim(unnest(string_split(resets, ';'))) AS series FROM parts) p JOIN series_of s USING (series))
    SELECT *, dense_rank() OVER (ORDER BY frame, codes)::INTEGER AS rule FROM (
    SELECT f.frame, c.characteristic, list(n.code ORDER BY n.code) FILTER (n.code IS NOT NULL AND n.code <> '') AS codes
    FROM (SELECT DISTINCT frame FROM units) f CROSS JOIN all_characteristics c
    LEFT JOIN named n ON n.frame = f.frame AND n.characteristic = c.characteristic GROUP BY f.frame, c.characteristic);`;

/**
 * Cuts every unit's history into runs at its resets, once for each rule of its frame; `overhaul_resets` shows it by
 * characteristic.
 *
 * The first run starts at 0 h. A held overhaul still ends a run, and the one after it starts at unknown hours: no line is drawn across
 * it. Where its date cannot be read it is placed by its hours, or after the unit's last overhaul; one held beside
 * another of the same unit and day is the same opening.
 */
export const runsSql = `
  CREATE TABLE lost_overhauls AS
    SELECT DISTINCT trim(r.unit) AS unit, r.fitted, r.file, r.line,
      coalesce(try_cast(r.date AS DATE),
        (SELECT min(o.date) FROM overhauls o WHERE o.unit = trim(r.unit) AND o.unit_hours > try_cast(r.unit_hours AS DOUBLE)),
        (SELECT max(o.date) + 1 FROM overhauls o WHERE o.unit = trim(r.unit))) AS date
    FROM raw_overhauls r JOIN problems p ON p.table_name = 'overhauls' AND p.file = r.file AND p.line = r.line AND p.action = 'held' AND p.column_name <> 'overhaul'
    WHERE NOT EXISTS (SELECT 1 FROM overhauls o WHERE (o.file = r.file AND o.line = r.line) OR (o.unit = trim(r.unit) AND o.date = try_cast(r.date AS DATE)));
  CREATE TABLE openings AS
    SELECT id, overhaul, unit, date, unit_hours, fitted, false AS lost, file, line FROM overhauls
    UNION ALL SELECT NULL, NULL, unit, date, NULL, fitted, true, file, line FROM lost_overhauls WHERE date IS NOT NULL;
  CREATE TABLE opening_resets AS
    WITH flagged AS (
      SELECT o.*, u.id AS unit_id, u.frame, r.rule, NOT (r.codes IS NULL OR list_contains(r.codes, 'assembly')) AS by_part,
        CASE WHEN by_part THEN list_has_any(r.codes, list_transform(string_split(coalesce(o.fitted, ''), ';'), lambda code: trim(code))) ELSE true END AS resets
      FROM openings o JOIN units u USING (unit) JOIN (SELECT DISTINCT frame, codes, rule FROM reset_rules) r ON r.frame = u.frame),
    counted AS (
      SELECT *, row_number() OVER history AS place, sum(CASE WHEN resets THEN 1 ELSE 0 END) OVER (history ROWS UNBOUNDED PRECEDING)::INTEGER AS run_left,
        coalesce(last_value(${lastReset} IGNORE NULLS) OVER (history ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), 0) AS start_found
      FROM flagged
      WINDOW history AS (PARTITION BY unit_id, rule ORDER BY date, lost DESC, unit_hours, id))
    SELECT *, run_left - CASE WHEN resets THEN 1 ELSE 0 END AS run_found, coalesce(${lastReset}, start_found) AS start_left FROM counted;
  CREATE VIEW overhaul_resets AS SELECT o.*, r.characteristic FROM opening_resets o JOIN reset_rules r USING (rule);`;
