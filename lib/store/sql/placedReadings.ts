import { fourClockSeries } from '../../records/characteristics';
import { lengthUnitFactorsSql } from './lengthUnitFactors';
import { longestFirstRun_h, unknownStart } from './runs';

/** Readings in millimetres with the variance that an interval adds: (upper - lower)^2 / 12. */
export const readingsInMillimetresSql = `
  CREATE TABLE length_units AS SELECT CAST(uom AS readings_uom) AS uom, factor FROM ${lengthUnitFactorsSql};
  CREATE VIEW readings_mm AS
    SELECT r.id, r.file, r.line, r.overhaul, r.characteristic, r.stage, r.clock,
      CASE WHEN r.lower IS NOT NULL AND r.upper IS NOT NULL THEN (r.lower + r.upper) / 2 ELSE r.value END * f.factor AS value_mm,
      r.lower * f.factor AS lower_mm, r.upper * f.factor AS upper_mm,
      coalesce(pow((r.upper - r.lower) * f.factor, 2) / 12, 0) AS interval_variance
    FROM readings r JOIN length_units f USING (uom)`;

/** Level of a set by what its series is, from its four positions, and the variance that intervals add to it. */
export const levels: Readonly<
  Record<(typeof fourClockSeries)[number], readonly [value: string, variance: string]>
> = {
  largest: ['greatest(c12, c3, c6, c9)', 'largest_variance'],
  smallest: ['least(c12, c3, c6, c9)', 'largest_variance'],
  mean: ['(c12 + c3 + c6 + c9) / 4', 'interval_variance / 16'],
  offset: ['sqrt(pow((c3 - c9) / 2, 2) + pow((c12 - c6) / 2, 2))', 'interval_variance / 8'],
};

/** Sets of a condition with all four positions. */
const fullSetsSql = (condition: string) => `
  SELECT overhaul, characteristic, stage, file, line, interval_variance, largest_variance,
    coalesce(c12, c3 + c9 - c6) AS c12, coalesce(c3, c12 + c6 - c9) AS c3, coalesce(c6, c3 + c9 - c12) AS c6, coalesce(c9, c12 + c6 - c3) AS c9
  FROM clock_sets WHERE ${condition}`;

const levelColumns = fourClockSeries.map((kind) => `${levels[kind][0]} AS ${kind}_mm`).join(', ');

/** Rows of a stage of an overhaul, each placed in its run. */
function placedSql(rows: string, columns: string): string {
  const ofStage = (what: string) =>
    `CASE WHEN m.stage = 'found' THEN o.${what}_found ELSE o.${what}_left END`;
  return `
    SELECT o.id AS overhaul_id, m.characteristic, m.stage, m.file, m.line, ${columns}, ${ofStage('run')} AS run, ${ofStage('start')} AS start_hours,
      CASE WHEN ${ofStage('start')} = ${unknownStart} THEN CAST('held' AS why_unplaced)
        WHEN m.stage = 'found' AND o.place = 1 AND NOT o.by_part AND o.unit_hours > ${longestFirstRun_h} THEN 'first' END AS unplaced
    FROM (${rows}) m JOIN opening_resets o ON o.overhaul = m.overhaul
    JOIN reset_rules r ON r.rule = o.rule AND r.characteristic = m.characteristic`;
}

/** Placed readings of characteristics with one reading, of a condition. */
export function placedReadingsSql(condition: string): string {
  return placedSql(
    `SELECT * FROM readings_mm WHERE clock IS NULL AND ${condition}`,
    'm.value_mm, m.lower_mm, m.upper_mm, m.interval_variance',
  );
}

/** Placed sets of clock positions, of a condition, with the levels of their series. */
export function placedSetsSql(condition: string): string {
  return placedSql(fullSetsSql(condition), `${levelColumns}, m.interval_variance, m.largest_variance`);
}

/** Names of the series, and what is told of a reading that cannot be placed. */
export const seriesNamesSql = `
  CREATE TYPE series_name AS ENUM (SELECT DISTINCT series FROM series_of ORDER BY series);
  CREATE TYPE why_unplaced AS ENUM ('held', 'first');
  CREATE TABLE series_kinds AS SELECT characteristic, CAST(series AS series_name) AS series,
      CASE WHEN series = CAST(characteristic AS VARCHAR) THEN '' ELSE series[length(CAST(characteristic AS VARCHAR)) + 2:] END AS kind FROM series_of;`;

const cases = (of: (kind: (typeof fourClockSeries)[number]) => string) =>
  `CASE k.kind ${fourClockSeries.map((kind) => `WHEN '${kind}' THEN ${of(kind)}`).join(' ')} END`;

/**
 * Series from readings, each placed in its run, with their overhaul: a single characteristic gives a series of its own code; four
 * clock positions give largest, smallest, mean and offset. With three positions the fourth follows from mean and offset with no
 * ovality (c12 + c6 = c3 + c9).
 *
 * As found at an overhaul belongs to the run before its reset, as left to the run after it. `unplaced` is 'held' where the run
 * starts at an overhaul that is held, 'first' where it is a first one that must have started at an opening that no file has.
 * A set is kept as one row, since storing its four levels in a row each takes longer than reading them from there.
 */
export const runReadingsSql = `
  CREATE VIEW run_readings AS SELECT o.overhaul, o.unit, o.date, o.unit_hours, p.*, o.unit_hours - p.start_hours AS run_hours FROM (
      SELECT p.overhaul_id, p.characteristic, k.series, p.stage, p.file, p.line, p.value_mm, p.lower_mm, p.upper_mm, p.interval_variance,
        p.run, p.start_hours, p.unplaced
      FROM placed_readings p JOIN series_kinds k ON k.characteristic = p.characteristic AND k.kind = ''
      UNION ALL
      SELECT p.overhaul_id, p.characteristic, k.series, p.stage, p.file, p.line, ${cases((kind) => `p.${kind}_mm`)}, NULL, NULL,
        ${cases((kind) => `p.${levels[kind][1]}`)}, p.run, p.start_hours, p.unplaced
      FROM placed_sets p JOIN series_kinds k ON k.characteristic = p.characteristic AND k.kind <> '') p
    JOIN overhauls o ON o.id = p.overhaul_id;`;

/** Readings whose run has no known start. */
export const readingsOfUnknownRunSql = `
  SELECT r.id, coalesce(r.value_column, 'value') AS column_name, r.raw_text AS raw,
    CASE x.unplaced WHEN 'held' THEN 'an overhaul before it is held, so when its run started is not known: settle that row first'
      ELSE 'when its run started is not known: the first overhaul of the unit in the files is at ' || CAST(round(x.unit_hours) AS BIGINT)
        || ' h. Add the overhaul or delivery record before it' END AS reason
  FROM readings r JOIN (SELECT DISTINCT overhaul, characteristic, stage, unplaced, unit_hours FROM run_readings WHERE unplaced IS NOT NULL) x
    USING (overhaul, characteristic, stage)`;

/** Drops the held readings from the runs and lists first runs of fitted parts that are taken to start at 0 h. */
export const settleRunsSql = `
  DELETE FROM placed_readings WHERE unplaced IS NOT NULL;
  DELETE FROM placed_sets WHERE unplaced IS NOT NULL;
  INSERT INTO problems SELECT 'overhauls', r.file, r.line, 'unit_hours', CAST(CAST(round(r.unit_hours) AS BIGINT) AS VARCHAR),
      'no earlier overhaul in the files: the run of ' || string_agg(DISTINCT r.characteristic, ', ' ORDER BY r.characteristic) || ' is taken to start at 0 h', 'interpreted'
    FROM overhaul_resets r
    WHERE r.place = 1 AND r.by_part AND NOT r.lost AND r.unit_hours > ${longestFirstRun_h}
      AND EXISTS (SELECT 1 FROM run_readings x WHERE x.unit = r.unit AND x.characteristic = r.characteristic AND x.run = 0)
    GROUP BY r.file, r.line, r.unit_hours;`;
