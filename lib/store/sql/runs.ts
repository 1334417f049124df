/** Above these hours at a unit's first known opening, earlier openings are missing from the files. */
export const longestFirstRun_h = 20_000;

/** Stands for the unknown start of a run that a held overhaul began; hours are never negative. */
const unknownStart = -1;

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
    SELECT f.frame, c.characteristic, list(n.code ORDER BY n.code) FILTER (n.code IS NOT NULL AND n.code <> '') AS codes
    FROM (SELECT DISTINCT frame FROM units) f CROSS JOIN all_characteristics c
    LEFT JOIN named n ON n.frame = f.frame AND n.characteristic = c.characteristic GROUP BY f.frame, c.characteristic;`;

/**
 * Cuts every unit's history of a characteristic into runs at its resets.
 *
 * As found at an overhaul belongs to the run before its reset, as left to the run after it. The first run
 * starts at 0 h. A held overhaul still ends a run, and the one after it starts at unknown hours: no line is drawn across
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
  CREATE TABLE overhaul_resets AS
    WITH flagged AS (
      SELECT o.*, u.frame, r.characteristic, NOT (r.codes IS NULL OR list_contains(r.codes, 'assembly')) AS by_part,
        (NOT by_part OR list_has_any(r.codes, list_transform(string_split(coalesce(o.fitted, ''), ';'), lambda code: trim(code)))) AS resets
      FROM openings o JOIN units u USING (unit) JOIN reset_rules r ON r.frame = u.frame)
    SELECT *, row_number() OVER history AS place,
      coalesce(sum(CASE WHEN resets THEN 1 ELSE 0 END) OVER (history ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), 0)::INTEGER AS run_found,
      sum(CASE WHEN resets THEN 1 ELSE 0 END) OVER (history ROWS UNBOUNDED PRECEDING)::INTEGER AS run_left,
      coalesce(last_value(${lastReset} IGNORE NULLS) OVER (history ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), 0) AS start_found,
      coalesce(last_value(${lastReset} IGNORE NULLS) OVER (history ROWS UNBOUNDED PRECEDING), 0) AS start_left
    FROM flagged
    WINDOW history AS (PARTITION BY unit, characteristic ORDER BY date, lost DESC, unit_hours, id);
  CREATE TABLE run_readings AS
    SELECT s.*, o.unit, o.frame, o.date, o.unit_hours, o.by_part, o.place, o.fitted,
      CASE WHEN s.stage = 'found' THEN o.run_found ELSE o.run_left END AS run,
      CASE WHEN s.stage = 'found' THEN o.start_found ELSE o.start_left END AS start_hours,
      o.unit_hours - start_hours AS run_hours,
      CASE WHEN start_hours = ${unknownStart} THEN 'an overhaul before it is held, so when its run started is not known: settle that row first'
        WHEN s.stage = 'found' AND o.place = 1 AND NOT o.by_part AND o.unit_hours > ${longestFirstRun_h}
        THEN 'when its run started is not known: the first overhaul of the unit in the files is at ' || CAST(round(o.unit_hours) AS BIGINT)
          || ' h. Add the overhaul or delivery record before it' END AS why_unplaced
    FROM series_readings s JOIN overhaul_resets o ON o.overhaul = s.overhaul AND o.characteristic = s.characteristic;`;

/** Readings whose run has no known start. */
export const readingsOfUnknownRunSql = `
  SELECT DISTINCT r.id, coalesce(r.value_column, 'value') AS column_name, t.raw, x.why_unplaced AS reason
  FROM readings r JOIN reading_texts t USING (id) JOIN run_readings x ON x.overhaul = r.overhaul AND x.characteristic = r.characteristic AND x.stage = r.stage
  WHERE x.why_unplaced IS NOT NULL`;

/** Drops the held readings from the runs and lists first runs of fitted parts that are taken to start at 0 h. */
export const settleRunsSql = `
  DELETE FROM run_readings WHERE why_unplaced IS NOT NULL;
  INSERT INTO problems SELECT 'overhauls', r.file, r.line, 'unit_hours', CAST(CAST(round(r.unit_hours) AS BIGINT) AS VARCHAR),
      'no earlier overhaul in the files: the run of ' || string_agg(DISTINCT r.characteristic, ', ' ORDER BY r.characteristic) || ' is taken to start at 0 h', 'interpreted'
    FROM overhaul_resets r
    WHERE r.place = 1 AND r.by_part AND NOT r.lost AND r.unit_hours > ${longestFirstRun_h}
      AND EXISTS (SELECT 1 FROM run_readings x WHERE x.unit = r.unit AND x.characteristic = r.characteristic AND x.run = 0)
    GROUP BY r.file, r.line, r.unit_hours;`;
