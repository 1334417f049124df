import { group } from 'd3-array';
import { z } from 'zod';
import type { Connector } from '../store/Connector';
import { queryRows } from '../store/queryRows';
import { unitDerivedHoursSql, unitMeterEventsSql, unitStaysSql } from '../store/sql/unitPlaces';
import type { UnitPlaces } from './types';

const words = z.string().nullable();
const amount = z.number().nullable();
const stayRow = z.object({
  engine: z.string(),
  site: words,
  bank: words,
  from_date: z.string(),
  to_date: words,
  unit_hours_at_fit: amount,
  engine_hours_at_fit: amount,
});
const eventRow = z.object({
  date: z.string(),
  engine: z.string(),
  kind: z.enum(['meter_replaced', 'meter_corrected']),
  hours: amount,
});
const derivedRow = z.object({
  overhaul: z.string(),
  date: z.string(),
  engine: z.string(),
  unit_hours: z.number(),
  unit_hours_at_fit: z.number(),
  engine_hours_at_fit: z.number(),
  engine_hours: z.number(),
  event_hours: amount,
});

/** Where a unit sat up to a day and how its hours were derived from the meters there. */
export async function unitPlaces(connector: Connector, unit: string, asOf: string): Promise<UnitPlaces> {
  const stays = await queryRows(connector, unitStaysSql, stayRow, [unit, asOf]);
  const meterEvents = await queryRows(connector, unitMeterEventsSql, eventRow, [unit, asOf]);
  const derived = await queryRows(connector, unitDerivedHoursSql, derivedRow, [unit, asOf]);
  return {
    stays: stays.map((row) => ({
      engine: row.engine,
      site: row.site,
      bank: row.bank,
      from: row.from_date,
      to: row.to_date,
      unitHoursAtFit: row.unit_hours_at_fit,
      engineHoursAtFit: row.engine_hours_at_fit,
    })),
    meterEvents,
    derived: [...group(derived, (row) => row.overhaul).values()].flatMap((rows) => {
      const [row] = rows;
      if (row === undefined) return [];
      return {
        overhaul: row.overhaul,
        date: row.date,
        engine: row.engine,
        unitHours: row.unit_hours,
        unitHoursAtFit: row.unit_hours_at_fit,
        engineHoursAtFit: row.engine_hours_at_fit,
        engineHours: row.engine_hours,
        eventHours: rows.flatMap(({ event_hours }) => event_hours ?? []),
      };
    }),
  };
}
