import { quoted } from '../../../store/sql/quoted';
import { unknownStart } from '../../../store/sql/runs';
import { refusedReasons, unusedReasons } from '../unusedReasons';
import { statisticsColumns } from '../Warehouse';
import { cutSql } from './cutSql';

const finite = (column: string) => `abs(${column}) < 'Infinity'::double precision`;

/** Reason why a reading cannot be used as it stands. */
const faultSql = `CASE
    WHEN NOT coalesce(${finite('(lower_mm + upper_mm)')}, ${finite('value_mm')}, false) THEN ${quoted(refusedReasons.noValue)}
    WHEN lower_mm > upper_mm OR value_mm NOT BETWEEN lower_mm AND upper_mm THEN ${quoted(refusedReasons.interval)}
    WHEN stage NOT IN ('found', 'left') THEN ${quoted(refusedReasons.stage)}
    WHEN clock NOT IN ('12', '3', '6', '9') THEN ${quoted(refusedReasons.clock)} END`;

/** The readings of a characteristic at one stage of an overhaul as a row, with the mean reading and what its interval adds. */
const setsSql = (readings: string) => `
  checked AS (
    SELECT unit, overhaul, characteristic, stage, clock, coalesce((lower_mm + upper_mm) / 2, value_mm) AS y_mm,
      least(value_mm, lower_mm) AS least_mm, coalesce((upper_mm - lower_mm) * (upper_mm - lower_mm) / 12, 0) AS spread, ${faultSql} AS fault
    FROM ${readings}),
  sets AS (
    SELECT unit, overhaul, characteristic, stage, count(*) AS readings, max(fault) AS fault, min(least_mm) AS least_mm,
      max(y_mm) FILTER (WHERE clock IS NULL) AS single, max(y_mm) FILTER (WHERE clock = '12') AS c12, max(y_mm) FILTER (WHERE clock = '3') AS c3,
      max(y_mm) FILTER (WHERE clock = '6') AS c6, max(y_mm) FILTER (WHERE clock = '9') AS c9, sum(spread) AS spread_sum, max(spread) AS spread_most
    FROM checked GROUP BY unit, overhaul, characteristic, stage)`;

/** Sets with their run, the missing fourth position filled in, and the reason why they are in no series. */
const placedSql = `
  placed AS (
    SELECT s.unit, s.characteristic, s.readings, s.single, s.spread_sum, s.spread_most,
      coalesce(c12, c3 + c9 - c6) AS c12, coalesce(c3, c12 + c6 - c9) AS c3, coalesce(c6, c3 + c9 - c12) AS c6, coalesce(c9, c12 + c6 - c3) AS c9,
      CASE stage WHEN 'found' THEN run_found ELSE run_left END AS run, unit_hours, start.hours AS start_hours,
      CASE WHEN fault IS NOT NULL THEN fault
        WHEN c.unit IS NULL OR m.characteristic IS NULL THEN ${quoted(refusedReasons.unplaced)}
        WHEN m."isFourClock" <> (single IS NULL) OR (single IS NOT NULL AND positions > 0) THEN ${quoted(refusedReasons.shape)}
        WHEN s.readings > greatest(positions, 1) THEN ${quoted(refusedReasons.twice)}
        WHEN m."isNeverNegative" AND least_mm < 0 THEN ${quoted(refusedReasons.negative)}
        WHEN unit_hours IS NULL THEN ${quoted(unusedReasons.noHours)}
        WHEN date > $3::date THEN ${quoted(unusedReasons.later)}
        WHEN m."isFourClock" AND positions < 3 THEN ${quoted(unusedReasons.incomplete)}
        WHEN start.hours = ${unknownStart} THEN ${quoted(unusedReasons.unknownStart)}
        WHEN stage = 'found' AND is_late_first THEN ${quoted(unusedReasons.firstRun)} END AS unused
    FROM sets s LEFT JOIN (cut c JOIN measured m USING (frame, rule)) USING (unit, overhaul, characteristic)
    CROSS JOIN LATERAL (SELECT num_nonnulls(c12, c3, c6, c9) AS positions) p
    CROSS JOIN LATERAL (SELECT CASE stage WHEN 'found' THEN start_found ELSE start_left END AS hours) start)`;

/** A row a series: one for a single characteristic or an unused set, four for clock positions. */
const levelsSql = `
  levels AS (
    SELECT CASE WHEN unused IS NULL THEN unit ELSE '' END AS unit, coalesce(unused, characteristic || kind) AS series,
      CASE WHEN unused IS NULL THEN run ELSE 0 END AS run, CASE WHEN unused IS NULL THEN spread ELSE 0 END AS spread_mm2,
      CASE WHEN unused IS NULL THEN (unit_hours - start_hours) / 10000 ELSE 0 END AS x, CASE WHEN unused IS NULL THEN y_mm ELSE 0 END AS y,
      CASE WHEN unused IS NOT NULL OR kind IN ('', '_mean') THEN readings ELSE 0 END AS readings
    FROM placed CROSS JOIN LATERAL (VALUES
        ('', single, spread_sum), ('_largest', greatest(c12, c3, c6, c9), spread_most), ('_smallest', least(c12, c3, c6, c9), spread_most),
        ('_mean', (c12 + c3 + c6 + c9) / 4, spread_sum / 16),
        ('_offset', sqrt((c3 - c9) / 2 * ((c3 - c9) / 2) + (c12 - c6) / 2 * ((c12 - c6) / 2)), spread_sum / 8)) AS level(kind, y_mm, spread)
    WHERE CASE WHEN unused IS NOT NULL OR single IS NOT NULL THEN kind = '' ELSE kind <> '' END)`;

/**
 * Statistics of every run of one partition, in order of `statisticsColumns`; $1 and $2 are the rules and what is
 * measured as JSON, $3 the day. Sums are taken about the means in a second pass over the readings of a run, as on the way
 * by readings: runs of two readings come out the same to the last bit, and few fits are sharp enough to need more.
 *
 * @param readings table or partition of readings
 * @param overhauls table or partition with the overhauls of the same units
 */
export function statisticsSql(readings: string, overhauls: string): string {
  return `
  WITH measured AS (
    SELECT * FROM jsonb_to_recordset($2::jsonb) AS m("frame" text, "characteristic" text, "rule" integer, "isFourClock" boolean, "isNeverNegative" boolean)),
  ${cutSql(overhauls)}, ${setsSql(readings)}, ${placedSql}, ${levelsSql},
  runs AS (
    SELECT unit, series, run, spread_mm2, array_agg(x) FILTER (WHERE unit <> '') AS xs, array_agg(y) FILTER (WHERE unit <> '') AS ys,
      count(*) AS count, sum(x) / count(*) AS mean_x, sum(y) / count(*) AS mean_y, min(x) AS min_x, max(x) AS max_x, sum(readings) AS readings
    FROM levels GROUP BY unit, series, run, spread_mm2)
  SELECT ${statisticsColumns.join(', ')} FROM runs CROSS JOIN LATERAL (
    SELECT coalesce(sum((x - mean_x) * (x - mean_x)), 0) AS sxx_c, coalesce(sum((x - mean_x) * (y - mean_y)), 0) AS sxy_c,
      coalesce(sum((y - mean_y) * (y - mean_y)), 0) AS syy_c
    FROM unnest(xs, ys) AS reading(x, y)) AS centred`;
}
