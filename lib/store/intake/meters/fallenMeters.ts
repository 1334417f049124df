import { group } from 'd3-array';
import { hoursOutOfOrder } from '../../../records/hoursInOrder';
import type { Connector } from '../../Connector';
import { quoted } from '../../sql/quoted';
import { eventCountsSql } from '../../sql/unitHours';
import { hoursText } from './meterRecords';

/** Every reading of every engine meter with what the events make of it, in order of day. */
const readingsSql = `
  SELECT m.id::INTEGER AS id, m.engine, m.site, CAST(m.day AS VARCHAR) AS day, m.hours::DOUBLE AS hours, (m.hours + coalesce(sum(e.value), 0))::DOUBLE AS continuous
  FROM (SELECT id, engine, site, date AS day, engine_hours AS hours FROM overhauls WHERE engine IS NOT NULL AND engine_hours IS NOT NULL) m
  LEFT JOIN events e ON ${eventCountsSql}
  WHERE m.engine IN (SELECT engine FROM overhauls WHERE unit_hours IS NULL AND engine_hours IS NOT NULL)
  GROUP BY m.id, m.engine, m.site, m.day, m.hours ORDER BY m.engine, m.site, m.day, continuous, m.id`;

interface MeterReading {
  readonly id: number;
  readonly engine: string;
  readonly site: string | null;
  readonly day: string;
  readonly hours: number;
  readonly continuous: number;
}

/**
 * Finds meters that go down with no event to explain it. Readings that alone do not fit are held; where a meter starts
 * lower for good, nothing after can be told from what was before, and waits for the event.
 */
export async function holdFallenMeters(connector: Connector): Promise<void> {
  const rows = (await connector.query(readingsSql)) as unknown as readonly MeterReading[];
  const statements: string[] = [];
  for (const readings of group(rows, ({ engine, site }) => `${engine}\u0000${site ?? ''}`).values()) {
    const out = hoursOutOfOrder(readings.map(({ continuous }) => continuous));
    const first = out[0];
    if (first === undefined) continue;
    const last = readings.length - 1;
    const isForGood = first === 0 || out.length === last - first + 1;
    if (isForGood) statements.push(fallSql(readings));
    else for (const index of out) statements.push(outlierSql(readings, index));
  }
  if (statements.length > 0) await connector.run(statements.join(';\n'));
}

/** The first reading below the one before it: from its day on the meter cannot be followed from before. */
function fallSql(readings: readonly MeterReading[]): string {
  const at = readings.findIndex(
    ({ continuous }, index) => continuous < (readings[index - 1]?.continuous ?? continuous),
  );
  const [before, after] = [readings[at - 1] as MeterReading, readings[at] as MeterReading];
  const reason = `the hour meter of ${after.engine} falls from ${hoursText(before.hours)} on ${before.day} to ${hoursText(after.hours)} on ${after.day} and no event explains it: give meter_replaced with the old meter’s last reading in events.csv, or correct the figure`;
  const site = after.site === null ? 'NULL' : quoted(after.site);
  return `INSERT INTO unsure_meters VALUES (${quoted(after.engine)}, ${site}, ${quoted(after.day)}, ${quoted(after.day)}, 1, ${quoted(reason)})`;
}

function outlierSql(readings: readonly MeterReading[], index: number): string {
  const { id, engine, hours } = readings[index] as MeterReading;
  const [before, after] = [readings[index - 1], readings[index + 1]];
  const others = [before, after]
    .filter((one) => one !== undefined)
    .map((one) => `${hoursText(one.hours)} on ${one.day}`)
    .join(' and ');
  const reason = `the hour meter of ${engine} reads ${hoursText(hours)}, which does not fit between ${others}: check the figure`;
  return `INSERT INTO hours_waiting VALUES (${id}, ${quoted(reason)}, true)`;
}
