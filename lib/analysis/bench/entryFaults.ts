import { daysBetween, daysPerYear } from '../isoDate';
import { hoursAtDate } from '../unitNow';
import type { BenchEntry } from './benchEntry';
import { typedHours } from './typedReading';
import type { EntryFault } from './types';
import type { UnitBench } from './unitBench';

/** Hours this far from those expected on the day are asked about: a share of what was run since the last overhaul, h at least. */
const offShare = 0.35;
const off_h = 1_500;

/** What date and hours lack, and what is to be asked about them. */
export function entryFaults(
  bench: UnitBench,
  asOf: string,
  entry: BenchEntry,
  readings: number,
): readonly EntryFault[] {
  const { hours, reason } = typedHours(entry.unitHours);
  const date = /^\d{4}-\d{2}-\d{2}$/.test(entry.date) ? entry.date : null;
  return [
    ...(date === null ? [{ field: 'date', kind: 'needed', what: 'no date' } as const] : []),
    ...(hours === null ? [{ field: 'unitHours', kind: 'needed', what: 'no hours', reason } as const] : []),
    ...(readings === 0 ? [{ field: 'readings', kind: 'needed', what: 'no reading' } as const] : []),
    ...(date === null ? [] : dateFaults(bench, date)),
    ...(hours === null ? [] : hoursFaults(bench, asOf, hours, date)),
  ];
}

function dateFaults({ history }: UnitBench, date: string): readonly EntryFault[] {
  const [last] = history;
  if (history.some((one) => one.date === date))
    return [{ field: 'date', kind: 'asked', what: 'same day', date }];
  if (last !== undefined && date < last.date)
    return [{ field: 'date', kind: 'asked', what: 'before the last', date: last.date }];
  return [];
}

function hoursFaults(
  { unit, history }: UnitBench,
  asOf: string,
  hours: number,
  date: string | null,
): readonly EntryFault[] {
  const [last] = history;
  if (last?.unitHours == null) return [];
  const common = { field: 'unitHours', kind: 'asked' } as const;
  if (hours < last.unitHours) return [{ ...common, what: 'fewer hours', hours: last.unitHours }];
  if (date === null) return [];
  if (hours - last.unitHours > 24 * Math.max(1, daysBetween(last.date, date)))
    return [{ ...common, what: 'more than the days hold' }];
  const expected = expectedHours(unit.hoursNow, unit.hoursPerYear, asOf, date);
  const most = Math.max(off_h, offShare * ((expected ?? 0) - last.unitHours));
  return expected !== null && Math.abs(hours - expected) > most
    ? [{ ...common, what: 'far from expected', hours: expected }]
    : [];
}

/** Hours expected on a day, before or after the as-of date. */
function expectedHours(
  hoursNow: number | null,
  hoursPerYear: number | null,
  asOf: string,
  date: string,
): number | null {
  if (date >= asOf) return hoursAtDate(date, hoursNow, hoursPerYear, asOf);
  if (hoursNow === null || hoursPerYear === null) return null;
  return Math.max(0, hoursNow - (hoursPerYear * daysBetween(date, asOf)) / daysPerYear);
}
