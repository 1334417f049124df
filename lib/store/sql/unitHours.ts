/**
 * Unit hours of every overhaul: as given, or derived from the engine meter through the installation and meter events.
 *
 * Hours on a meter are made continuous by adding what events say up to that day: the last reading of each meter replaced,
 * and each correction. On the day of a replacement a reading below the old meter's last one is the new meter's.
 */
export const unitHoursSql = `
  CREATE TABLE meter_readings AS
    SELECT 'overhaul' AS of_what, o.id, coalesce(o.engine, i.engine) AS engine, o.date AS day, o.engine_hours AS hours, i.id AS installation
    FROM overhauls o LEFT JOIN LATERAL (
      SELECT * FROM installations i WHERE i.unit = o.unit AND i.from_date <= o.date AND coalesce(i.to_date, o.date) >= o.date
        AND (o.engine IS NULL OR i.engine = o.engine) ORDER BY i.from_date DESC LIMIT 1) i ON true
    WHERE o.unit_hours IS NULL AND o.engine_hours IS NOT NULL
    UNION ALL
    SELECT 'installation', i.id, i.engine, i.from_date, i.engine_hours_at_fit, i.id FROM installations i;
  CREATE TABLE continuous_hours AS
    SELECT m.of_what, m.id, m.installation, any_value(m.hours) + coalesce(sum(e.value), 0) AS hours
    FROM meter_readings m LEFT JOIN events e ON e.engine = m.engine
      AND e.kind IN ('meter_replaced', 'meter_corrected')
      AND (e.date < m.day OR (e.date = m.day AND (e.kind = 'meter_corrected' OR m.hours < e.value)))
    GROUP BY m.of_what, m.id, m.installation;
  CREATE TABLE derived_hours AS
    SELECT o.id, i.unit_hours_at_fit + reading.hours - fit.hours AS unit_hours, i.engine AS engine
    FROM continuous_hours reading
    JOIN overhauls o ON o.id = reading.id
    JOIN installations i ON i.id = reading.installation
    JOIN continuous_hours fit ON fit.of_what = 'installation' AND fit.id = i.id
    WHERE reading.of_what = 'overhaul' AND i.unit_hours_at_fit IS NOT NULL AND fit.hours IS NOT NULL;
  ALTER TABLE overhauls ADD COLUMN hours_derived BOOLEAN DEFAULT false;
  UPDATE overhauls SET unit_hours = d.unit_hours, hours_derived = true
    FROM derived_hours d WHERE d.id = overhauls.id AND d.unit_hours >= 0;
  INSERT INTO problems SELECT 'overhauls', o.file, o.line, 'engine_hours', CAST(CAST(o.engine_hours AS BIGINT) AS VARCHAR),
      'unit hours ' || CAST(round(o.unit_hours) AS BIGINT) || ' derived from the meter of engine ' || d.engine, 'interpreted'
    FROM overhauls o JOIN derived_hours d ON d.id = o.id WHERE o.hours_derived;`;

/** Overhauls whose hours are neither given nor derivable. */
export const overhaulsWithoutHoursSql = `
  SELECT o.id, 'unit_hours' AS column_name, coalesce(CAST(CAST(o.engine_hours AS BIGINT) AS VARCHAR), '') AS raw,
    CASE WHEN o.engine_hours IS NULL THEN 'neither unit_hours nor engine_hours can be read: give one of them'
      WHEN d.unit_hours < 0 THEN 'the engine meter gives ' || CAST(round(d.unit_hours) AS BIGINT) || ' h on the unit: check the meter events'
      ELSE 'unit hours cannot be derived: installations.csv has no row with engine_hours_at_fit and unit_hours_at_fit for this unit on that day' END AS reason
  FROM overhauls o LEFT JOIN derived_hours d ON d.id = o.id WHERE o.unit_hours IS NULL`;

/** Hours of every unit in order of date, to be checked for falling ones. */
export const hoursByDateSql = `
  SELECT id, unit, CAST(unit_hours AS DOUBLE) AS unit_hours, CAST(date AS VARCHAR) AS date
  FROM overhauls ORDER BY unit, date, unit_hours, id`;

/** The overhauls of the given ids, held because their hours fall; says the most hours seen before them. */
export function fallingHoursSql(ids: readonly string[]): string {
  const list = ids.join(', ');
  return `
  SELECT o.id, 'unit_hours' AS column_name, CAST(CAST(round(o.unit_hours) AS BIGINT) AS VARCHAR) AS raw,
    'the hours do not rise with the dates of the unit’s other overhauls (' || coalesce(CAST(CAST(round((SELECT max(p.unit_hours) FROM overhauls p
       WHERE p.unit = o.unit AND p.date <= o.date AND p.id NOT IN (${list}))) AS BIGINT) AS VARCHAR), 'no') || ' h before it): check hours and date' AS reason
  FROM overhauls o WHERE o.id IN (${list})`;
}
