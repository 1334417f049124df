/** Condition: event e adds to what meter reading m (engine, site, day, hours) says. */
export const eventCountsSql = `e.engine = m.engine AND (e.site IS NULL OR m.site IS NULL OR e.site = m.site)
      AND e.kind IN ('meter_replaced', 'meter_corrected')
      AND (e.date < m.day OR (e.date = m.day AND (e.kind = 'meter_corrected' OR m.hours < e.value)))`;

/**
 * Tables that what is asked of meters and places fills before hours are derived: overhauls that wait, with the reason
 * (`is_wrong`: the reading itself contradicts the others), and meters that cannot be followed over a day. Events carry
 * the site where a remark tells it, since engines of several sites may share a name.
 */
export const meterDoubtsSql = `
  ALTER TABLE events ADD COLUMN site VARCHAR;
  CREATE TABLE hours_waiting (id INTEGER, reason VARCHAR, is_wrong BOOLEAN);
  CREATE TABLE unsure_meters (engine VARCHAR, site VARCHAR, day DATE, fit_before DATE, rank INTEGER, reason VARCHAR);
  INSERT INTO unsure_meters SELECT engine, site, date, date + 1, 0,
      'the event of the hour meter of ' || engine || ' on ' || date || ' (line ' || line || ' of ' || file || ') gives no hours: add its value'
    FROM events WHERE kind IN ('meter_replaced', 'meter_corrected') AND value IS NULL;`;

/**
 * Unit hours of every overhaul: as given, or derived from the engine meter through the installation and meter events.
 *
 * Hours on a meter are made continuous by adding what events say up to that day: the last reading of each meter replaced,
 * and each correction. On the day of a replacement a reading below the old meter's last one is the new meter's.
 *
 *     unit hours = unit hours when fitted + continuous reading - continuous reading when fitted
 *
 * Where the unit hours when fitted are not given, they are those at the end of the installation before: its meter must
 * have been read on the day that the unit left.
 */
export const unitHoursSql = `
  CREATE TABLE meter_readings AS
    SELECT 'overhaul' AS of_what, o.id, coalesce(o.engine, i.engine) AS engine, coalesce(o.site, i.site) AS site, o.date AS day, o.engine_hours AS hours, i.id AS installation
    FROM overhauls o LEFT JOIN LATERAL (
      SELECT * FROM installations i WHERE i.unit = o.unit AND i.from_date <= o.date AND coalesce(i.to_date, o.date) >= o.date
        AND (o.engine IS NULL OR i.engine = o.engine) ORDER BY i.from_date DESC LIMIT 1) i ON true
    WHERE o.unit_hours IS NULL AND o.engine_hours IS NOT NULL
    UNION ALL
    SELECT 'installation', i.id, i.engine, i.site, i.from_date, i.engine_hours_at_fit, i.id FROM installations i;
  INSERT INTO meter_readings
    WITH known AS (
      SELECT unit, engine, site, date AS day, engine_hours AS hours FROM overhauls
        WHERE engine IS NOT NULL AND engine_hours IS NOT NULL AND id NOT IN (SELECT id FROM hours_waiting WHERE is_wrong)
      UNION ALL SELECT unit, engine, site, from_date, engine_hours_at_fit FROM installations WHERE engine_hours_at_fit IS NOT NULL)
    SELECT 'removal', i.id, i.engine, i.site, i.to_date, arg_min(k.hours, CASE WHEN k.unit = i.unit THEN 0 ELSE 1 END), i.id
    FROM installations i JOIN known k ON k.engine = i.engine AND k.day = i.to_date AND (k.site IS NULL OR i.site IS NULL OR k.site = i.site)
    GROUP BY i.id, i.engine, i.site, i.to_date;
  CREATE TABLE counted_events AS
    SELECT m.of_what, m.id, e.id AS event, e.value FROM meter_readings m JOIN events e ON ${eventCountsSql};
  CREATE TABLE continuous_hours AS
    SELECT m.of_what, m.id, m.installation, any_value(m.engine) AS engine, any_value(m.site) AS site, any_value(m.day) AS day,
      any_value(m.hours) AS read_hours, any_value(m.hours) + coalesce(sum(e.value), 0) AS hours
    FROM meter_readings m LEFT JOIN counted_events e ON e.of_what = m.of_what AND e.id = m.id
    GROUP BY m.of_what, m.id, m.installation;
  CREATE TABLE hours_since_fit AS
    SELECT r.of_what, r.id, r.installation, r.read_hours, r.hours - fit.hours AS hours, arg_min(u.reason, u.rank) AS unsure
    FROM continuous_hours r JOIN continuous_hours fit ON fit.of_what = 'installation' AND fit.id = r.installation
    LEFT JOIN unsure_meters u ON u.engine = r.engine AND (u.site IS NULL OR r.site IS NULL OR u.site = r.site) AND fit.day < u.fit_before AND r.day >= u.day
      AND fit.day < r.day
    WHERE r.of_what <> 'installation'
    GROUP BY r.of_what, r.id, r.installation, r.read_hours, r.hours, fit.hours;
  CREATE TABLE installation_hours AS
    WITH RECURSIVE placed AS (
      SELECT id, unit, unit_hours_at_fit AS given, row_number() OVER (PARTITION BY unit ORDER BY from_date, id) AS place FROM installations),
    chain AS (
      SELECT id, unit, place, given AS hours, CAST(NULL AS VARCHAR) AS unsure FROM placed WHERE place = 1
      UNION ALL
      SELECT p.id, p.unit, p.place,
        CASE WHEN p.given IS NOT NULL THEN p.given WHEN s.hours >= 0 AND s.unsure IS NULL THEN c.hours + s.hours END,
        CASE WHEN p.given IS NULL THEN coalesce(c.unsure, s.unsure) END
      FROM chain c JOIN placed p ON p.unit = c.unit AND p.place = c.place + 1
      LEFT JOIN hours_since_fit s ON s.of_what = 'removal' AND s.installation = c.id)
    SELECT id, hours, unsure FROM chain;
  CREATE TABLE derived_hours AS
    SELECT s.id, i.engine, i.id AS installation, s.hours AS hours_since_fit, at_fit.hours AS hours_at_fit,
      CASE WHEN s.unsure IS NULL AND s.hours >= 0 AND s.id NOT IN (SELECT id FROM hours_waiting) THEN at_fit.hours + s.hours END AS unit_hours,
      coalesce(s.unsure, at_fit.unsure) AS unsure
    FROM hours_since_fit s JOIN installations i ON i.id = s.installation JOIN installation_hours at_fit ON at_fit.id = i.id
    WHERE s.of_what = 'overhaul';
  ALTER TABLE overhauls ADD COLUMN hours_derived BOOLEAN DEFAULT false;
  UPDATE overhauls SET unit_hours = d.unit_hours, hours_derived = true
    FROM derived_hours d WHERE d.id = overhauls.id AND d.unit_hours >= 0;
  INSERT INTO problems SELECT 'overhauls', o.file, o.line, 'engine_hours', CAST(CAST(o.engine_hours AS BIGINT) AS VARCHAR),
      'unit hours ' || CAST(round(o.unit_hours) AS BIGINT) || ' derived from the meter of engine ' || d.engine, 'interpreted'
    FROM overhauls o JOIN derived_hours d ON d.id = o.id WHERE o.hours_derived;`;

const whole = (hours: string) => `CAST(CAST(round(${hours}) AS BIGINT) AS VARCHAR)`;

/** The text of an overhaul's cell of unit hours. */
const hoursTextSql = `(SELECT any_value(r.unit_hours) FROM raw_overhauls r WHERE r.file = o.file AND r.line = o.line)`;

/**
 * Overhauls whose hours are neither given nor derivable; the reason says what is missing or contradicts. A workshop's sheet
 * keeps its cell of hours, whichever it has, under unit_hours.
 */
export const overhaulsWithoutHoursSql = `
  SELECT o.id, CASE WHEN o.engine_hours IS NULL OR EXISTS (SELECT 1 FROM own_texts t WHERE t.file = o.file) THEN 'unit_hours' ELSE 'engine_hours' END AS column_name, coalesce(CAST(CAST(o.engine_hours AS BIGINT) AS VARCHAR), '') AS raw,
    CASE WHEN o.engine_hours IS NULL THEN 'neither unit_hours nor engine_hours can be read: give one of them'
      WHEN w.reason IS NOT NULL THEN w.reason
      WHEN d.unsure IS NOT NULL THEN d.unsure
      WHEN d.hours_since_fit < 0 THEN 'the hour meter of ' || d.engine || ' reads ' || ${whole('o.engine_hours')} || ' h, less than the ' || ${whole('i.engine_hours_at_fit')}
        || ' h when ' || o.unit || ' was fitted on ' || i.from_date || ' with all meter events: one is missing, or a figure is wrong'
      WHEN i.id IS NOT NULL AND i.engine_hours_at_fit IS NULL THEN 'the reading of the hour meter of ' || i.engine || ' on ' || i.from_date || ', when ' || o.unit
        || ' was fitted, is not known: give engine_hours_at_fit in installations.csv'
      WHEN i.id IS NOT NULL THEN 'the hours of ' || o.unit || ' when it was fitted on ' || i.engine || ' on ' || i.from_date
        || ' are not known: give unit_hours_at_fit in installations.csv, or the day it left the engine before and the meter there'
      ELSE 'unit hours cannot be derived: installations.csv has no row with engine_hours_at_fit and unit_hours_at_fit for this unit on that day' END AS reason
  FROM overhauls o LEFT JOIN derived_hours d ON d.id = o.id LEFT JOIN installations i ON i.id = d.installation
  LEFT JOIN (SELECT id, min(reason) AS reason FROM hours_waiting GROUP BY id) w ON w.id = o.id WHERE o.unit_hours IS NULL`;

/** Hours in order of date of every unit whose hours fall from one overhaul to the next. */
export const fallingHistoriesSql = `
  SELECT id, unit, CAST(unit_hours AS DOUBLE) AS unit_hours, CAST(date AS VARCHAR) AS date FROM overhauls WHERE unit IN (
    SELECT unit FROM (SELECT unit, unit_hours < lag(unit_hours) OVER (PARTITION BY unit ORDER BY date, unit_hours, id) AS falls FROM overhauls) WHERE falls)
  ORDER BY unit, date, unit_hours, id`;

/** The overhauls of the given ids, held because their hours fall; says the most hours seen before them. */
export function fallingHoursSql(ids: readonly string[]): string {
  const list = ids.join(', ');
  return `
  SELECT o.id, 'unit_hours' AS column_name, ${hoursTextSql} AS raw,
    CASE WHEN o.hours_derived THEN CAST(round(o.unit_hours) AS BIGINT) || ' h derived from the engine meter: ' ELSE '' END || 'the hours do not rise with the dates of the unit’s other overhauls (' || coalesce(CAST(CAST(round((SELECT max(p.unit_hours) FROM overhauls p
       WHERE p.unit = o.unit AND p.date <= o.date AND p.id NOT IN (${list}))) AS BIGINT) AS VARCHAR), 'no') || ' h before it): check hours and date' AS reason
  FROM overhauls o WHERE o.id IN (${list})`;
}
