import type { QuestionList } from '../../../records/intake/Answers';
import type { RemarkFact } from '../../../records/intake/remarks/RemarkFact';
import type { Connector } from '../../Connector';
import { holdRows } from '../../holdRows';
import { quoted } from '../../sql/quoted';
import { eventCountsSql, meterDoubtsSql, overhaulsWithoutHoursSql, unitHoursSql } from '../../sql/unitHours';
import { type AskedFact, askRemarks, eventKinds, eventValue, type KnownEvent } from './askRemarks';
import { holdFallenMeters } from './fallenMeters';
import { engineNames, isSameEngine, type MeterOverhaul, meterOverhauls } from './meterRecords';
import { type Stay, unitPlaces, whyOpen } from './unitPlaces';

/**
 * Derives unit hours from engine meters: asks what remarks say of meters and places, puts what is confirmed into events
 * and installations, derives, and holds what cannot be derived with its reason.
 */
export async function settleUnitHours(connector: Connector, questions: QuestionList): Promise<void> {
  await connector.run(meterDoubtsSql);
  const overhauls = await meterOverhauls(connector);
  if (overhauls.length > 0) {
    await askAboutMeters(connector, overhauls, questions);
    await holdFallenMeters(connector);
  }
  await connector.run(unitHoursSql);
  await holdRows(connector, 'overhauls', overhaulsWithoutHoursSql);
}

async function askAboutMeters(
  connector: Connector,
  overhauls: readonly MeterOverhaul[],
  questions: QuestionList,
): Promise<void> {
  const asked = askRemarks(overhauls, await engineNames(connector), await knownEvents(connector), questions);
  const meterFacts = asked.filter(isOfMeter);
  const statements = meterFacts.flatMap((one) => eventSql(one));
  if (statements.length > 0) await connector.run(statements.join(';\n'));
  const added = await hoursAddedByEvents(connector);
  const { stays, unplaced } = unitPlaces({
    overhauls,
    asked,
    questions,
    hoursFromNew: (overhaul) =>
      meterFacts.some(
        (one) => isDoubt(one) && isSameEngine(one.overhaul, overhaul) && (one.day as string) < overhaul.date,
      )
        ? null
        : (overhaul.engineHours ?? 0) + (added.get(overhaul.id) ?? 0),
  });
  const rest = [
    ...stays.map((stay) => staySql(stay, added.get(stay.told.id) ?? 0)),
    ...unplaced.map(({ id, reason }) => `INSERT INTO hours_waiting VALUES (${id}, ${quoted(reason)}, false)`),
  ];
  if (rest.length > 0) await connector.run(rest.join(';\n'));
}

type MeterFact = Exclude<RemarkFact, { kind: 'unit fitted' }>;

function isOfMeter(one: AskedFact): one is AskedFact<MeterFact> {
  return one.fact.kind !== 'unit fitted';
}

function isDoubt({ answer }: AskedFact): boolean {
  return answer === 'open' || answer === 'incomplete';
}

async function knownEvents(connector: Connector): Promise<readonly KnownEvent[]> {
  const rows = await connector.query(
    'SELECT engine, kind, CAST(date AS VARCHAR) AS date, value::DOUBLE AS value FROM events',
  );
  return rows.map((row) => ({
    engine: String(row.engine),
    site: null,
    kind: String(row.kind),
    date: String(row.date),
    value: row.value === null ? null : Number(row.value),
  }));
}

/** What the events add to the meter reading of each overhaul, h; those without are left out. */
async function hoursAddedByEvents(connector: Connector): Promise<ReadonlyMap<number, number>> {
  const rows = await connector.query(
    `SELECT m.id::INTEGER AS id, sum(e.value)::DOUBLE AS hours
     FROM (SELECT id, engine, site, date AS day, engine_hours AS hours FROM overhauls WHERE engine_hours IS NOT NULL) m JOIN events e ON ${eventCountsSql}
     GROUP BY m.id`,
  );
  return new Map(rows.map((row) => [Number(row.id), Number(row.hours)]));
}

const orNull = (text: string | null) => (text === null ? 'NULL' : quoted(text));

function noteSql(
  { file, line, remarks }: MeterOverhaul,
  column: string,
  raw: string | null,
  sentence: string,
): string {
  return `INSERT INTO problems VALUES ('overhauls', ${quoted(file)}, ${line}, ${quoted(column)}, ${quoted(raw ?? remarks ?? '')}, ${quoted(`as answered: ${sentence}`)}, 'interpreted')`;
}

/** A confirmed event into the table of events; one that waits makes the meter unsure from its day on. */
function eventSql(one: AskedFact<MeterFact>): readonly string[] {
  const { fact, overhaul, answer, day, sentence } = one;
  const { file, line, engine, site, remarksColumn } = overhaul;
  if (answer === 'no') return [];
  if (isDoubt(one))
    return [
      `INSERT INTO unsure_meters VALUES (${quoted(engine)}, ${orNull(site)}, ${quoted(day as string)}, ${quoted(day as string)}::DATE + 1, 0, ${quoted(whyOpen(one))})`,
    ];
  return [
    `INSERT INTO events BY NAME SELECT (SELECT coalesce(max(id), 0) + 1 FROM events) AS id, ${quoted(file)} AS file, ${line} AS line,
      ${quoted(day as string)}::DATE AS date, ${quoted(engine)} AS engine, ${quoted(eventKinds[fact.kind])} AS kind, ${eventValue(fact)}::DOUBLE AS value, ${orNull(site)} AS site`,
    noteSql(overhaul, remarksColumn, null, sentence),
  ];
}

function staySql(
  { told, from, to, engineHoursAtFit, unitHoursAtFit, sentence, isFromNew }: Stay,
  added: number,
): string {
  const own = unitHoursAtFit === 'meter' ? (engineHoursAtFit ?? 0) + added : unitHoursAtFit;
  const hours = (value: number | null) => (value === null ? 'NULL::DOUBLE' : `${value}::DOUBLE`);
  const raw = isFromNew ? String(told.engineHours) : null;
  return `INSERT INTO installations BY NAME SELECT (SELECT coalesce(max(id), 0) + 1 FROM installations) AS id, ${quoted(told.file)} AS file, ${told.line} AS line,
      ${quoted(told.unit)} AS unit, ${orNull(told.site)} AS site, ${quoted(told.engine)} AS engine, ${orNull(told.bank)} AS bank,
      ${quoted(from)}::DATE AS from_date, ${to === null ? 'NULL' : quoted(to)}::DATE AS to_date, ${hours(engineHoursAtFit)} AS engine_hours_at_fit, ${hours(own)} AS unit_hours_at_fit;
    ${noteSql(told, isFromNew ? told.hoursColumn : told.remarksColumn, raw, sentence)}`;
}
