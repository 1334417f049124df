import type { UnitPosition } from '../store/questions';
import { type GroupBy, sisterGroupOf } from './grouping/sisterGroupOf';
import { daysBetween, daysPerYear, isoDatePlus } from './isoDate';
import type { UnitRow } from './types';

/** Years that the Fleet strip and the lists of planned overhauls look ahead. */
export const yearsAhead = 5;

/** A unit on the as-of date, with the hours that its forecasts start from. */
export interface UnitNow {
  readonly row: UnitRow;
  readonly hoursNow: number | null;
  readonly hoursPerYear: number | null;
  readonly ratedLife_h: number | null;
  /** Unit hours at the next planned overhaul. */
  readonly hoursAtNextOverhaul: number | null;
}

/**
 * State of a unit on a day: hours carried forward by the hours per year of its plan, or, without a plan, by those observed
 * between its first and last overhaul. A unit that is not installed does not run.
 *
 * @param groupBy what sister groups are made of
 */
export function unitNow(position: UnitPosition, groupBy: GroupBy, asOf: string): UnitNow {
  const hoursPerYear =
    position.installed === 1 ? (position.hours_per_year ?? position.observed_hours_per_year) : null;
  const planned = carried(position.plan_hours, position.plan_date, hoursPerYear, asOf);
  const last = carried(position.last_hours, position.last_date, hoursPerYear, asOf);
  // A plan that states fewer hours than the last overhaul saw is out of date.
  const fromPlan = planned !== null && planned >= (position.last_hours ?? 0);
  const hoursNow = fromPlan ? planned : last;
  const next = nextOverhaulDate(position, hoursNow, hoursPerYear, asOf);
  const row: UnitRow = {
    unit: position.unit,
    frame: position.frame,
    group: sisterGroupOf(groupBy, { frame: position.frame, site: position.site, hoursPerYear }),
    site: position.site,
    engine: position.engine,
    bank: position.bank,
    hoursNow,
    hoursPerYear,
    hoursSource:
      hoursNow === null ? null : fromPlan && position.hours_per_year !== null ? 'plan' : 'overhauls',
    nextOverhaulDate: next,
    plannedOverhauls: plannedOverhauls(next, position.interval_h, hoursPerYear, asOf),
    ratedLifeDate: dateAtHours(position.rated_life_h, hoursNow, hoursPerYear, asOf),
    lastOverhaulDate: position.last_date,
    lastWorkshop: position.last_workshop,
    overhauls: position.overhauls,
  };
  return {
    row,
    hoursNow,
    hoursPerYear,
    ratedLife_h: position.rated_life_h,
    hoursAtNextOverhaul: hoursAtDate(next, hoursNow, hoursPerYear, asOf),
  };
}

function carried(
  hours: number | null,
  date: string | null,
  hoursPerYear: number | null,
  asOf: string,
): number | null {
  if (hours === null) return null;
  return date === null ? hours : hours + ((hoursPerYear ?? 0) * daysBetween(date, asOf)) / daysPerYear;
}

function nextOverhaulDate(
  position: UnitPosition,
  hoursNow: number | null,
  hoursPerYear: number | null,
  asOf: string,
): string | null {
  if (position.installed !== 1) return null;
  if (position.next_overhaul_date !== null) return position.next_overhaul_date;
  if (position.interval_h === null || position.last_hours === null) return null;
  const due = dateAtHours(position.last_hours + position.interval_h, hoursNow, hoursPerYear, asOf);
  return due !== null && due < asOf ? asOf : due;
}

function plannedOverhauls(
  next: string | null,
  interval_h: number | null,
  hoursPerYear: number | null,
  asOf: string,
): readonly string[] {
  if (next === null) return [];
  const end = isoDatePlus(asOf, yearsAhead * daysPerYear);
  const dates = [next];
  if (interval_h !== null && interval_h > 0 && hoursPerYear !== null && hoursPerYear > 0) {
    const days = Math.max(1, (interval_h / hoursPerYear) * daysPerYear);
    for (let date = isoDatePlus(next, days); date <= end; date = isoDatePlus(date, days)) dates.push(date);
  }
  return dates.filter((date) => date >= asOf && date <= end);
}

/** Unit hours on a day, from the hours now; null where the hours now or the hours per year are not known. */
export function hoursAtDate(
  date: string | null,
  hoursNow: number | null,
  hoursPerYear: number | null,
  asOf: string,
): number | null {
  if (date === null || hoursNow === null || hoursPerYear === null) return null;
  return hoursNow + (hoursPerYear * Math.max(0, daysBetween(asOf, date))) / daysPerYear;
}

/** Day on which the unit reaches the hours; null where it does not run, or beyond the year 2200. */
export function dateAtHours(
  hours: number | null,
  hoursNow: number | null,
  hoursPerYear: number | null,
  asOf: string,
): string | null {
  if (hours === null || hoursNow === null || hoursPerYear === null || hoursPerYear <= 0) return null;
  const days = ((hours - hoursNow) / hoursPerYear) * daysPerYear;
  return Math.abs(days) > 60_000 ? null : isoDatePlus(asOf, days);
}
