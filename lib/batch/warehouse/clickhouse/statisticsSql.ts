import { unknownStart } from '../../../store/sql/runs';
import { refusedReasons, unusedReasons } from '../unusedReasons';
import type { Measured, WarehouseQuestion } from '../Warehouse';
import { cutSql } from './cutSql';
import { quotedText } from './literals';

/** Pairs of condition and result as nested conditions; the first that holds counts. */
function firstOf(
  cases: readonly (readonly [condition: string, reason: string])[],
  otherwise: string,
): string {
  return cases.reduceRight(
    (rest, [condition, reason]) => `if(${condition}, ${quotedText(reason)}, ${rest})`,
    otherwise,
  );
}

const isInterval = 'isNotNull(lower_mm) AND isNotNull(upper_mm)';
const faultSql = firstOf(
  [
    [`NOT isFinite(y_mm)`, refusedReasons.noValue],
    [
      `ifNull(lower_mm > upper_mm, 0) OR ifNull(value_mm < lower_mm, 0) OR ifNull(value_mm > upper_mm, 0)`,
      refusedReasons.interval,
    ],
    [`stage NOT IN ('found', 'left')`, refusedReasons.stage],
    [`clock_or_none NOT IN ('', '12', '3', '6', '9')`, refusedReasons.clock],
  ],
  `''`,
);

/** The readings of a characteristic at one stage of an overhaul as a row, with the mean reading and what its interval adds. */
const setsSql = `
  SELECT unit, overhaul, characteristic, stage, count() AS readings, max(fault) AS worst_fault, min(lowest_mm) AS least_mm,
    countIf(clock_or_none = '') AS singles, maxIf(y_mm, clock_or_none = '') AS single,
    toUInt8(countIf(clock_or_none = '12') > 0) AS has12, toUInt8(countIf(clock_or_none = '3') > 0) AS has3,
    toUInt8(countIf(clock_or_none = '6') > 0) AS has6, toUInt8(countIf(clock_or_none = '9') > 0) AS has9,
    maxIf(y_mm, clock_or_none = '12') AS at12, maxIf(y_mm, clock_or_none = '3') AS at3, maxIf(y_mm, clock_or_none = '6') AS at6,
    maxIf(y_mm, clock_or_none = '9') AS at9, sum(spread) AS spread_sum, max(spread) AS spread_most
  FROM (
    SELECT unit, overhaul, characteristic, stage, ifNull(clock, '') AS clock_or_none,
      assumeNotNull(if(${isInterval}, (ifNull(lower_mm, 0) + ifNull(upper_mm, 0)) / 2, ifNull(value_mm, nan))) AS y_mm,
      least(ifNull(value_mm, inf), ifNull(lower_mm, inf)) AS lowest_mm,
      if(${isInterval}, (ifNull(upper_mm, 0) - ifNull(lower_mm, 0)) * (ifNull(upper_mm, 0) - ifNull(lower_mm, 0)) / 12, 0) AS spread, ${faultSql} AS fault
    FROM readings)
  GROUP BY unit, overhaul, characteristic, stage`;

function measuredSql(measured: readonly Measured[]): string {
  const tuples = measured.map(
    (one) =>
      `(${quotedText(one.frame)}, ${quotedText(one.characteristic)}, ${one.rule}, ${Number(one.isFourClock)}, ${Number(one.isNeverNegative)})`,
  );
  return `SELECT arrayJoin([${tuples.join(', ')}]) AS m, m.1 AS frame, m.2 AS characteristic, toUInt32(m.3) AS rule,
      m.4 AS is_four_clock, m.5 AS is_never_negative`;
}

function unusedSql(asOf: string): string {
  return firstOf(
    [
      [`is_placed = 0`, refusedReasons.unplaced],
      [`is_four_clock != (singles = 0) OR (singles > 0 AND positions > 0)`, refusedReasons.shape],
      [`readings > greatest(positions, 1)`, refusedReasons.twice],
      [`is_never_negative AND least_mm < 0`, refusedReasons.negative],
      [`unit_hours < 0`, unusedReasons.noHours],
      [`day > toInt32(toDate(${quotedText(asOf)}))`, unusedReasons.later],
      [`is_four_clock AND positions < 3`, unusedReasons.incomplete],
      [`start_hours = ${unknownStart}`, unusedReasons.unknownStart],
      [`stage = 'found' AND is_late_first`, unusedReasons.firstRun],
    ],
    `''`,
  );
}

/** Sets with their run, the missing fourth position filled in, and the reason why they are in no series. */
function placedSql({ asOf, rules, measured }: WarehouseQuestion): string {
  return `
  SELECT unit, characteristic, readings, single, spread_sum, spread_most, has12 + has3 + has6 + has9 AS positions,
    if(has12, at12, at3 + at9 - at6) AS c12, if(has3, at3, at12 + at6 - at9) AS c3,
    if(has6, at6, at3 + at9 - at12) AS c6, if(has9, at9, at12 + at6 - at3) AS c9,
    if(stage = 'found', found_run, left_run) AS run_then, if(stage = 'found', found_start, left_start) AS start_hours, unit_hours, is_four_clock,
    if(worst_fault != '', worst_fault, ${unusedSql(asOf)}) AS unused
  FROM (${setsSql}) ANY LEFT JOIN (
    SELECT unit, overhaul, characteristic, day, unit_hours, found_run, left_run, found_start, left_start, is_late_first,
      is_four_clock, is_never_negative, toUInt8(1) AS is_placed
    FROM (${cutSql(rules)}) ALL INNER JOIN (${measuredSql(measured)}) USING frame, rule) USING unit, overhaul, characteristic`;
}

/** A row a series: one for a single characteristic or an unused set, four for clock positions. */
function levelsSql(question: WarehouseQuestion): string {
  const unlessUnused = (value: string, otherwise: string) => `if(unused = '', ${value}, ${otherwise})`;
  return `
  SELECT ${unlessUnused('unit', `''`)} AS unit_name, ${unlessUnused('concat(characteristic, kind)', 'unused')} AS series,
    toInt32(${unlessUnused('run_then', '0')}) AS run, ${unlessUnused('spread', '0')} AS spread_mm2,
    ${unlessUnused('(unit_hours - start_hours) / 10000', '0')} AS x, ${unlessUnused('level_mm', '0')} AS y,
    if(kind IN ('', '_mean'), readings, 0) AS taken
  FROM (${placedSql(question)})
  ARRAY JOIN
    if(unused = '' AND is_four_clock, ['_largest', '_smallest', '_mean', '_offset'], ['']) AS kind,
    if(unused = '' AND is_four_clock, [greatest(greatest(c12, c3), greatest(c6, c9)), least(least(c12, c3), least(c6, c9)),
      (c12 + c3 + c6 + c9) / 4, sqrt((c3 - c9) / 2 * ((c3 - c9) / 2) + (c12 - c6) / 2 * ((c12 - c6) / 2))], [single]) AS level_mm,
    if(unused = '' AND is_four_clock, [spread_most, spread_most, spread_sum / 16, spread_sum / 8], [spread_sum]) AS spread`;
}

const sumOf = (product: string) => `arraySum(arrayMap((x, y) -> ${product}, xs, ys))`;

/**
 * Statistics of every run of one shard, in order of `statisticsColumns`. Sums are taken about the means in a second pass over
 * the readings of a run, which lie in two arrays.
 */
export function statisticsSql(question: WarehouseQuestion): string {
  return `
  SELECT unit_name AS unit, series, run, spread_mm2, count, mean_x, mean_y, ${sumOf('(x - mean_x) * (x - mean_x)')} AS sxx_c,
    ${sumOf('(x - mean_x) * (y - mean_y)')} AS sxy_c, ${sumOf('(y - mean_y) * (y - mean_y)')} AS syy_c, min_x, max_x, readings
  FROM (
    SELECT unit_name, series, run, spread_mm2, if(unit_name = '', emptyArrayFloat64(), groupArray(x)) AS xs,
      if(unit_name = '', emptyArrayFloat64(), groupArray(y)) AS ys, count() AS count, avg(x) AS mean_x, avg(y) AS mean_y,
      min(x) AS min_x, max(x) AS max_x, sum(taken) AS readings
    FROM (${levelsSql(question)}) GROUP BY unit_name, series, run, spread_mm2)`;
}

/** Has every shard answer a question about its own tables: the rows of all shards, nothing merged. */
export function onEveryShardSql(cluster: string, question: string, columns: readonly string[]): string {
  return `SELECT ${columns.join(', ')} FROM cluster(${quotedText(cluster)}, system, one)
    ALL INNER JOIN (SELECT toUInt8(0) AS dummy, ${columns.join(', ')} FROM (${question})) USING dummy`;
}
