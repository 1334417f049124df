import type { TextRow } from './csvText';
import { dayOf, daysPerYear, isoOf } from './days';
import { type Fleet, type Stay, unitHoursAt } from './installations';
import { hoursRun, lastReadingOfOldMeter, meterReading } from './meters';
import { meterCorrected, meterReplaced, move, noRatedLife, ratedLife_h } from './oddities';
import { openingsOf } from './schedule';
import { engineNamed } from './stations';
import { visitAt } from './trueRuns';

/** No overhaul is planned sooner than this after the last day of the data. */
const soonest_days = 14;

/** Last day of the data: the latest overhaul. */
export function lastDay(fleet: Fleet): number {
  return Math.max(...[...fleet.visits.values()].flatMap((visits) => visits.map((visit) => visit.day)));
}

/** Rows of units.csv. */
export function unitRows(fleet: Fleet): readonly TextRow[] {
  return [...fleet.visits].map(([unit, visits]) => {
    const delivery = visitAt(visits, 0);
    return {
      unit,
      frame: delivery.frame,
      made_on: isoOf(delivery.day - 45),
      rated_life_h: noRatedLife.includes(unit) ? '' : String(ratedLife_h),
    };
  });
}

/** Rows of installations.csv. */
export function installationRows(fleet: Fleet): readonly TextRow[] {
  return [...fleet.stays]
    .sort((a, b) => a.unit.localeCompare(b.unit) || a.fromDay - b.fromDay)
    .map((stay) => ({
      unit: stay.unit,
      site: stay.engine.site,
      engine: stay.engine.engine,
      bank: stay.bank,
      from_date: isoOf(stay.fromDay),
      to_date: stay.toDay === null ? '' : isoOf(stay.toDay),
      engine_hours_at_fit: String(meterReading(stay.engine, stay.fromDay)),
      unit_hours_at_fit: String(stay.unitHoursAtFit),
    }));
}

/** Stays that last until the end of the data, in order of engine and bank as the stations list them. */
export function currentStays(fleet: Fleet): readonly Stay[] {
  const current = fleet.stays.filter((stay) => stay.toDay === null);
  return current.sort(
    (a, b) => a.engine.engine.localeCompare(b.engine.engine) || a.bank.localeCompare(b.bank),
  );
}

/** Rows of plan.csv: the next overhaul falls due one interval after the engine's last planned one. */
export function planRows(fleet: Fleet): readonly TextRow[] {
  const today = lastDay(fleet);
  return currentStays(fleet).map((stay) => {
    const { engine } = stay;
    const last = openingsOf(engine)
      .filter(({ kind }) => kind === 'planned')
      .at(-1);
    const hoursSince = hoursRun(engine, today) - (last === undefined ? 0 : hoursRun(engine, last.day));
    const due_days = Math.round(((engine.interval_h - hoursSince) / engine.hoursPerYear) * daysPerYear);
    return {
      engine: engine.engine,
      bank: stay.bank,
      hours_per_year: String(engine.hoursPerYear),
      hours_now: String(unitHoursAt(stay, today)),
      hours_now_date: isoOf(today),
      next_overhaul_date: isoOf(today + Math.max(soonest_days, due_days)),
      interval_h: String(engine.interval_h),
    };
  });
}

/** Rows of events.csv. */
export function eventRows(fleet: Fleet): readonly TextRow[] {
  const fitted = fleet.stays.find((stay) => stay.unit === move.unit && stay.engine.engine === move.to.engine);
  if (fitted === undefined) throw new Error(`eventRows requires a stay of ${move.unit} on ${move.to.engine}`);
  const moved = {
    date: isoOf(fitted.fromDay),
    engine: move.to.engine,
    kind: 'unit_moved',
    value: String(fitted.unitHoursAtFit),
  };
  const replaced = {
    date: isoOf(dayOf(meterReplaced.date)),
    engine: meterReplaced.engine,
    kind: 'meter_replaced',
    value: String(lastReadingOfOldMeter(engineNamed(meterReplaced.engine))),
  };
  const corrected = {
    date: meterCorrected.date,
    engine: meterCorrected.engine,
    kind: 'meter_corrected',
    value: String(meterCorrected.hours),
  };
  return [replaced, moved, corrected].sort((a, b) => a.date.localeCompare(b.date));
}
