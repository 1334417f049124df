import { daysBetween, daysPerYear, isoDatePlus } from '../isoDate';
import { dateAtHours, hoursAtDate } from '../unitNow';
import type { ComingOverhaul, PlanChanges, UnitOverhauls, UnitPlan } from './types';

/** The present plan. */
export const noChanges: PlanChanges = { hoursPerYearFactor: 1, intervalFactor: 1, moved: null };

/** A unit opened more often than this within the horizon has an interval that cannot be meant. */
const mostOverhauls = 60;

/**
 * The planned overhauls of a unit from a day up to another.
 *
 * The first is that of plan.csv (or the last overhaul plus the interval); the next ones follow at the interval and the hours a
 * year, in whole days. One that should have been done already counts as due on the day, and the reason says so. Hours a year and
 * factors must be positive: throws otherwise.
 */
export function comingOverhauls(
  plan: UnitPlan,
  asOf: string,
  until: string,
  changes: PlanChanges,
): UnitOverhauls {
  checkFactors(changes);
  const { row } = plan.unit;
  if (!plan.installed) return { plan, overhauls: [], reason: 'not installed: no overhaul is planned' };
  const planned = row.nextOverhaulDate;
  if (planned === null) return { plan, overhauls: [], reason: noPlanReason(plan) };
  const first = firstOverhaul(plan, asOf, changes);
  const hoursPerYear = (plan.unit.hoursPerYear ?? 0) * changes.hoursPerYearFactor;
  const interval = (plan.interval_h ?? 0) * changes.intervalFactor;
  const days = interval > 0 && hoursPerYear > 0 ? Math.max(1, (interval / hoursPerYear) * daysPerYear) : null;
  const overhauls: ComingOverhaul[] = [];
  let { date, unitHours } = first;
  while (date <= until && overhauls.length < mostOverhauls) {
    const followingDate = days === null ? null : isoDatePlus(date, days);
    const followingHours = unitHours === null || days === null ? null : unitHours + interval;
    overhauls.push({ date, day: daysBetween(asOf, date), unitHours, followingHours, followingDate });
    if (followingDate === null) break;
    date = followingDate;
    unitHours = followingHours;
  }
  return { plan, overhauls, reason: planReason(plan, asOf, overhauls.length, changes) };
}

function checkFactors({ hoursPerYearFactor, intervalFactor }: PlanChanges): void {
  for (const factor of [hoursPerYearFactor, intervalFactor]) {
    if (!(factor > 0 && Number.isFinite(factor))) {
      throw new Error(`comingOverhauls requires positive factors, got ${factor}`);
    }
  }
}

function firstOverhaul(
  { unit, lastHours }: UnitPlan,
  asOf: string,
  { hoursPerYearFactor, intervalFactor, moved }: PlanChanges,
): { readonly date: string; readonly unitHours: number | null } {
  const { hoursNow, hoursPerYear } = unit;
  const faster = hoursPerYear === null ? null : hoursPerYear * hoursPerYearFactor;
  const later = (date: string) => (date < asOf ? asOf : date);
  if (moved !== null && moved.unit === unit.row.unit) {
    const date = later(moved.date);
    return { date, unitHours: hoursAtDate(date, hoursNow, faster, asOf) };
  }
  const planned = later(unit.row.nextOverhaulDate ?? asOf);
  const hours = hoursAtDate(planned, hoursNow, hoursPerYear, asOf);
  if (hours === null || hoursNow === null || (hoursPerYearFactor === 1 && intervalFactor === 1)) {
    return { date: planned, unitHours: hours };
  }
  const stretched = lastHours === null ? hours : lastHours + intervalFactor * (hours - lastHours);
  const unitHours = Math.max(hoursNow, stretched);
  return { date: dateAtHours(unitHours, hoursNow, faster, asOf) ?? planned, unitHours };
}

function noPlanReason({ interval_h, lastHours }: UnitPlan): string {
  if (interval_h === null) return 'no next overhaul and no interval in plan.csv for its engine and bank';
  if (lastHours === null)
    return 'no next overhaul in plan.csv, and no overhaul on record to count the interval from';
  return 'no next overhaul in plan.csv, and its day cannot be told without hours a year';
}

function planReason(
  { unit, interval_h }: UnitPlan,
  asOf: string,
  count: number,
  { moved }: PlanChanges,
): string | null {
  const { row, hoursNow, hoursPerYear } = unit;
  const planned = row.nextOverhaulDate ?? asOf;
  const reasons: string[] = [];
  if (moved !== null && moved.unit === row.unit) {
    if (moved.date < asOf)
      reasons.push(`its overhaul cannot be moved to ${moved.date}, which is past: counted as due on ${asOf}`);
  } else if (planned < asOf) {
    reasons.push(`its overhaul planned for ${planned} is past and not on record: counted as due on ${asOf}`);
  }
  if (hoursNow === null) reasons.push('its hours are not known: no wear is forecast');
  else if (hoursPerYear === null || hoursPerYear <= 0) {
    reasons.push(
      'its hours a year are not known or zero: no wear is forecast and only the next overhaul is counted',
    );
  }
  if (interval_h === null || interval_h <= 0) {
    reasons.push('no interval in plan.csv: only the next overhaul is counted');
  }
  if (count === mostOverhauls)
    reasons.push(`more than ${mostOverhauls} overhauls: the interval is too short to be meant`);
  return reasons.length === 0 ? null : reasons.join('; ');
}
