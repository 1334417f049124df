import type { MeterEvent, UnitPlaces } from '../../lib/analysis/types';
import { formatHours } from '../../lib/charts/format';

/** One line of a unit's timeline: a stay, or an event of the meter there. */
export interface PlaceRow {
  readonly from: string;
  readonly to: string | null;
  readonly what: string;
  readonly unitHours: number | null;
  readonly engineHours: number | null;
  readonly isEvent: boolean;
}

function eventWords({ engine, kind, hours }: MeterEvent): string {
  const what = `Hour meter of ${engine} ${kind === 'meter_replaced' ? 'replaced' : 'corrected'}`;
  if (hours === null) return `${what}, by how many hours is not given`;
  const reads = kind === 'meter_replaced' ? 'what the new one reads' : 'what it reads from then on';
  return `${what}: ${formatHours(hours)} added to ${reads}`;
}

/** Stays and meter events in order of day. */
export function placeRows({ stays, meterEvents }: UnitPlaces): readonly PlaceRow[] {
  const rows: PlaceRow[] = [
    ...stays.map((stay) => ({
      from: stay.from,
      to: stay.to,
      what: `On ${[stay.site, stay.engine, stay.bank].filter((part) => part !== null).join(' / ')}`,
      unitHours: stay.unitHoursAtFit,
      engineHours: stay.engineHoursAtFit,
      isEvent: false,
    })),
    ...meterEvents.map((event) => ({
      from: event.date,
      to: event.date,
      what: eventWords(event),
      unitHours: null,
      engineHours: null,
      isEvent: true,
    })),
  ];
  return rows.sort((a, b) =>
    a.from === b.from ? Number(a.isEvent) - Number(b.isEvent) : a.from < b.from ? -1 : 1,
  );
}
