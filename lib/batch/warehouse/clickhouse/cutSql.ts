import { longestFirstRun_h, unknownStart } from '../../../store/sql/runs';
import type { ResetRule } from '../Warehouse';
import { quotedText, textArray } from './literals';

function rulesSql(rules: readonly ResetRule[]): string {
  const tuples = rules.map(
    ({ rule, frame, partCodes }) => `(${rule}, ${quotedText(frame)}, ${textArray(partCodes)})`,
  );
  return `SELECT arrayJoin([${tuples.join(', ')}]) AS r, toUInt32(r.1) AS rule, r.2 AS frame, r.3 AS part_codes`;
}

/** Every unit's overhauls in order, each kind of value as an array; unknown hours are -1 and come first on their day. */
const historySql = `
  SELECT unit, arraySort(groupArray((toInt32(date), ifNull(unit_hours, toFloat64(${unknownStart})), overhaul,
      splitByChar(';', replaceRegexpAll(ifNull(fitted, ''), '^\\\\s+|\\\\s+$|\\\\s*(;)\\\\s*', '\\\\1'))))) AS history
  FROM overhauls GROUP BY unit`;

/**
 * The histories of the units of one shard, once for each rule of their frame, as arrays in order of time: runs and their
 * starts as found and as left.
 *
 * This release has no window functions: running sums over arrays count the resets, and a run starts at the first overhaul
 * that has its number. A column must be named outside lambdas too, or this release
 * does not fetch it.
 */
export function cutArraysSql(rules: readonly ResetRule[]): string {
  return `
  SELECT unit, frame, rule, notEmpty(part_codes) AS by_part,
    arrayMap(o -> o.1, history) AS days, arrayMap(o -> o.2, history) AS hours, arrayMap(o -> o.3, history) AS overhauls,
    if(empty(part_codes), arrayMap(o -> toInt32(1), history), arrayMap(o -> toInt32(hasAny(o.4, part_codes)), history)) AS resets,
    arrayCumSum(resets) AS run_left, arrayMap((run, resets_here) -> run - resets_here, run_left, resets) AS run_found,
    arrayMap(run -> run = 0 ? toFloat64(0) : hours[indexOf(run_left, run)], run_left) AS start_left,
    arrayMap(place -> place = 1 ? toFloat64(0) : start_left[place - 1], arrayEnumerate(history)) AS start_found
  FROM (
    SELECT unit, frame, rule, part_codes, history
    FROM (SELECT unit, frame, history FROM (${historySql}) ANY INNER JOIN (SELECT unit, frame FROM units) USING unit)
    ALL INNER JOIN (${rulesSql(rules)}) USING frame)`;
}

/** A row an overhaul and rule. */
export function cutSql(rules: readonly ResetRule[]): string {
  return `
  SELECT unit, frame, rule, overhaul, day, hours_then AS unit_hours, found_run, left_run, found_start, left_start,
    place = 1 AND NOT by_part AND hours_then > ${longestFirstRun_h} AS is_late_first
  FROM (${cutArraysSql(rules)})
  ARRAY JOIN overhauls AS overhaul, days AS day, hours AS hours_then, run_found AS found_run, run_left AS left_run,
    start_found AS found_start, start_left AS left_start, arrayEnumerate(overhauls) AS place`;
}

/** What every unit's cut comes to, by which it is compared with that of the overhauls beside the batch. */
export function historiesSql(rules: readonly ResetRule[]): string {
  return `
  SELECT unit, count() AS openings, sum(day) AS days, sumIf(unit_hours, unit_hours >= 0) AS hours,
    sumIf(left_run, unit_hours >= 0) AS runs, sumIf(left_start, unit_hours >= 0) AS start_hours
  FROM (${cutSql(rules)}) GROUP BY unit`;
}
