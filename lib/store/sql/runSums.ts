import { fourClockSeries } from '../../records/characteristics';
import { levels } from './placedReadings';
import { quoted } from './quoted';

/** Name of what shows the sums of runs up to a day (YYYY-MM-DD). */
export function runSumsTable(asOf: string): string {
  return `run_sums_on_${asOf.replaceAll('-', '_')}`;
}

/** Rows of a table of placed rows up to a day, with the unit and the run hours x in 10,000 h. */
function placedUpToSql(table: string, asOf: string): string {
  return `(SELECT p.*, o.unit_id, (o.unit_hours - p.start_hours) / 10000 AS x, o.unit_hours - p.start_hours AS run_hours
    FROM ${table} p JOIN (SELECT o.id, u.id AS unit_id, o.unit_hours FROM overhauls o JOIN units u USING (unit) WHERE o.date <= ${quoted(asOf)}::DATE) o
      ON o.id = p.overhaul_id)`;
}

const sumsOfHours = `count(*)::INTEGER AS count, avg(x) AS mean_x, min(run_hours) / 10000 AS min_x, max(run_hours) / 10000 AS max_x`;

/** Means and centred sums that a level adds to those of its hours; `weighted` where one of the readings has a spread of its own. */
function sumsOfLevel(level: string, variance: string, suffix: string): string {
  return `avg(${level}) AS mean_y${suffix}, regr_sxy(${level}, x) AS sxy_c${suffix}, regr_syy(${level}, x) AS syy_c${suffix},
    (max(${variance}) > 0)::UTINYINT AS weighted${suffix}`;
}

const levelSums = ['mean_y', 'sxy_c', 'syy_c', 'weighted'] as const;

/**
 * Makes what is asked for the sums of every run of every series up to a day (YYYY-MM-DD), if it is not there: count, means and centred
 * sums, x in 10,000 run hours and y in mm, every reading of weight 1. Units are told by their number.
 *
 * Each reading is met once, and the four series of a set of clock positions lie in one row, since they have their hours in common.
 */
export function createRunSumsSql(asOf: string): string {
  const ofSets = fourClockSeries.map((kind) => sumsOfLevel(`${kind}_mm`, levels[kind][1], `_${kind}`));
  const all = runSumsTable(asOf);
  const [singles, sets] = [`${all}_of_readings`, `${all}_of_sets`];
  const summed = (table: string, level_mm: string, sums: string) =>
    `SELECT characteristic, unit_id, run, ${sumsOfHours}, regr_sxx(${level_mm}, x) AS sxx_c, ${sums}
      FROM ${placedUpToSql(table, asOf)} GROUP BY characteristic, unit_id, run`;
  const ofKind = (table: string, kind: string, suffix: string) =>
    `SELECT k.series, s.unit_id, s.run, s.count, s.mean_x, s.min_x, s.max_x, s.sxx_c, ${levelSums.map((sum) => `s.${sum}${suffix} AS ${sum}`).join(', ')}
      FROM ${table} s JOIN series_kinds k ON k.characteristic = s.characteristic AND k.kind = '${kind}'`;
  return `
  CREATE TABLE IF NOT EXISTS ${singles} AS ${summed('placed_readings', 'value_mm', sumsOfLevel('value_mm', 'interval_variance', ''))};
  CREATE TABLE IF NOT EXISTS ${sets} AS ${summed('placed_sets', 'mean_mm', ofSets.join(', '))};
  CREATE VIEW IF NOT EXISTS ${all} AS ${[ofKind(singles, '', ''), ...fourClockSeries.map((kind) => ofKind(sets, kind, `_${kind}`))].join(' UNION ALL ')}`;
}

/** Series with readings up to the day, and whether interval readings are among them (0 or 1), in order. */
export function seriesOfRunSumsSql(asOf: string): string {
  return `SELECT series::VARCHAR AS series, max(weighted)::INTEGER AS weighted FROM ${runSumsTable(asOf)} GROUP BY series ORDER BY 1`;
}
