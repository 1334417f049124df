import { csvText } from './csvText';
import { exampleFiles } from './exampleSheet';
import { typedOverhauls, typedReadings } from './faults';
import { eventRows, installationRows, planRows, unitRows } from './fleetTables';
import { buildFleet } from './installations';
import { limitColumns, limitRows } from './limitTables';
import { partColumns, partRows } from './partTables';
import { recordsOf } from './records';
import { truthOf } from './truth';
import { unitHistory } from './unitHistory';

const columns = {
  units: ['unit', 'frame', 'made_on', 'rated_life_h'],
  installations: [
    'unit',
    'site',
    'engine',
    'bank',
    'from_date',
    'to_date',
    'engine_hours_at_fit',
    'unit_hours_at_fit',
  ],
  overhauls: [
    'overhaul',
    'unit',
    'date',
    'unit_hours',
    'engine_hours',
    'site',
    'engine',
    'bank',
    'workshop',
    'kind',
    'fitted',
    'remarks',
  ],
  readings: [
    'overhaul',
    'characteristic',
    'stage',
    'clock',
    'value',
    'uom',
    'lower',
    'upper',
    'source_file',
    'source_row',
  ],
  plan: [
    'engine',
    'bank',
    'hours_per_year',
    'hours_now',
    'hours_now_date',
    'next_overhaul_date',
    'interval_h',
  ],
  events: ['date', 'engine', 'kind', 'value'],
};

/** Every file that the demo command writes: path below data/ to text. The same text on every run and machine. */
export function demoFiles(): Readonly<Record<string, string>> {
  const fleet = buildFleet();
  const histories = [...fleet.visits.values()].map(unitHistory);
  const records = recordsOf(histories);
  const overhauls = typedOverhauls(records.overhauls.map(({ row }) => row));
  const readings = typedReadings(records.readings);
  const truth = truthOf(fleet, histories, records.overhauls, [overhauls, readings]);
  const examples = Object.entries(exampleFiles()).map(([name, text]) => [`examples/${name}`, text] as const);
  return {
    'demo/units.csv': csvText(columns.units, unitRows(fleet)),
    'demo/installations.csv': csvText(columns.installations, installationRows(fleet)),
    'demo/overhauls.csv': csvText(
      columns.overhauls,
      overhauls.map(({ row }) => row),
    ),
    'demo/readings.csv': csvText(
      columns.readings,
      readings.map(({ row }) => row),
    ),
    'demo/limits.csv': csvText(limitColumns, [
      ...limitRows('Lark'),
      ...limitRows('Heron'),
      ...limitRows('Osprey'),
    ]),
    'demo/parts.csv': csvText(partColumns, partRows),
    'demo/plan.csv': csvText(columns.plan, planRows(fleet)),
    'demo/events.csv': csvText(columns.events, eventRows(fleet)),
    'demo-truth/truth.json': `${JSON.stringify(truth, null, 1)}\n`,
    ...Object.fromEntries(examples),
  };
}
