import { open } from 'node:fs/promises';
import { min } from 'd3-array';
import { defaultDraws } from '../../analysis/demand/drawnFleet';
import { yearsCharted } from '../../analysis/drift/driftResult';
import type { ChartThreshold } from '../../stats/charts/thresholdForBudget';
import type { Connector } from '../../store/Connector';
import { openNodeDatabase } from '../../store/nodeDatabase';
import { quoted } from '../../store/sql/quoted';
import { tableOfHead } from '../../store/tableOfHead';
import { guessedThresholds } from './fleetThresholds';
import { isParquet, parquetRowsSql } from './readDataFile';
import type { DataFile, DataFolder } from './readDataFolder';

/** What the parts must agree on before each is analysed by itself. */
export interface FleetFacts {
  /** YYYY-MM-DD. */
  readonly asOf: string;
  /** Draws of every unit. */
  readonly draws: number;
  /** Only series with a signal at these are looked at again at the fleet's own thresholds. */
  readonly leastThresholds: readonly ChartThreshold[];
}

/** A first look at a partitioned input. */
export interface Survey {
  readonly facts: FleetFacts;
  /** Sentences about frames and units that lie in several parts. */
  readonly split: readonly string[];
}

/** Columns with a day, by table. */
const dayOf = {
  overhauls: 'date',
  plan: 'hours_now_date',
  events: 'date',
  installations: 'from_date',
} as const;

/**
 * Looks through the units and days of all parts, without any check of cells.
 *
 * The facts are a guess that spares a second reading: what an import finds afterwards is what counts.
 */
export async function surveyParts({ shared, parts }: DataFolder, asOf: string | null): Promise<Survey> {
  const database = await openNodeDatabase();
  try {
    const connector = await database.connect();
    await connector.run(
      'CREATE TABLE seen_units (part VARCHAR, unit VARCHAR, frame VARCHAR, overhauls INTEGER); CREATE TABLE seen_days (day DATE, of_overhaul BOOLEAN); CREATE TABLE seen_engines (part VARCHAR, engine VARCHAR, lacks_hours BOOLEAN)',
    );
    for (const file of shared) await lookAt(connector, '', file);
    for (const part of parts) for (const file of part.files) await lookAt(connector, part.name, file);
    const [found] = await connector.query(
      `SELECT CAST(max(day) AS VARCHAR) AS latest, CAST(min(day) FILTER (of_overhaul) AS VARCHAR) AS earliest,
        (SELECT count(DISTINCT unit)::INTEGER FROM seen_units) AS units FROM seen_days`,
    );
    const day = asOf ?? String(found?.latest ?? '1970-01-01');
    const years = yearsCharted(min([String(found?.earliest ?? day), day]) ?? day, day);
    const histories = await connector.query(
      'SELECT sum(overhauls)::INTEGER AS overhauls FROM seen_units WHERE overhauls > 0 GROUP BY unit',
    );
    return {
      facts: {
        asOf: day,
        draws: defaultDraws(Number(found?.units ?? 0)),
        leastThresholds: guessedThresholds(
          histories.map(({ overhauls }) => Number(overhauls)),
          years,
        ),
      },
      split: [
        ...(await splitOf(connector, 'frame')),
        ...(await splitOf(connector, 'unit')),
        ...(await splitEngines(connector)),
      ],
    };
  } finally {
    await database.close();
  }
}

/** A file in another form than the plain canonical one is left to the import. */
async function lookAt(connector: Connector, part: string, file: DataFile): Promise<void> {
  const from = isParquet(file.name)
    ? parquetRowsSql(file.path)
    : `read_csv(${quoted(file.path)}, all_varchar = true, header = true, delim = ',', quote = '"', ignore_errors = true, strict_mode = false, null_padding = true, hive_partitioning = false)`;
  try {
    const table = tableOfHead({ name: file.name, bytes: await headOf(connector, file, from) });
    const named = `SELECT ${quoted(part)}, nullif(trim(unit), '')`;
    if (table === 'units')
      await connector.run(`INSERT INTO seen_units ${named}, nullif(trim(frame), ''), 0 FROM ${from}`);
    if (table === 'overhauls')
      await connector.run(`INSERT INTO seen_units ${named}, NULL, count(*) FROM ${from} GROUP BY unit`);
    if (table !== null && table in dayOf) {
      const day = `try_cast(${dayOf[table as keyof typeof dayOf]} AS DATE)`;
      await connector.run(
        `INSERT INTO seen_days SELECT unnest([min(${day}), max(${day})]), ${table === 'overhauls'} FROM ${from}`,
      );
    }
    if (table === 'overhauls')
      await connector.run(
        `INSERT INTO seen_engines SELECT ${quoted(part)}, nullif(trim(engine), ''), bool_or(nullif(trim(CAST(unit_hours AS VARCHAR)), '') IS NULL) FROM ${from} GROUP BY engine`,
      );
  } catch {
    // The import says what is wrong with it, by file and line.
  }
}

const headBytes = 65_536;

async function headOf(connector: Connector, { name, path }: DataFile, from: string): Promise<Uint8Array> {
  if (isParquet(name)) {
    const columns = await connector.query(`SELECT column_name FROM (DESCRIBE SELECT * FROM ${from})`);
    return new TextEncoder().encode(`${columns.map((row) => row.column_name).join(',')}\n`);
  }
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(new Uint8Array(headBytes), 0, headBytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

/** Hours that are derived from an engine's meter need all that was read on that engine. */
async function splitEngines(connector: Connector): Promise<readonly string[]> {
  const rows = await connector.query(
    `SELECT engine, string_agg(DISTINCT part, ''', ''' ORDER BY part) AS parts FROM seen_engines
      WHERE engine IS NOT NULL AND part <> '' GROUP BY engine HAVING count(DISTINCT part) > 1 AND bool_or(lacks_hours) ORDER BY 1 LIMIT 5`,
  );
  return rows.map(
    ({ engine, parts }) =>
      `engine '${engine}' has units in the folders '${parts}', and unit hours are to be derived from its meter`,
  );
}

async function splitOf(connector: Connector, what: 'frame' | 'unit'): Promise<readonly string[]> {
  const rows = await connector.query(
    `SELECT ${what} AS name, string_agg(DISTINCT part, ''', ''' ORDER BY part) AS parts FROM seen_units
      WHERE ${what} IS NOT NULL AND part <> '' GROUP BY ${what} HAVING count(DISTINCT part) > 1 ORDER BY 1 LIMIT 5`,
  );
  return rows.map(({ name, parts }) => `${what} '${name}' lies in the folders '${parts}'`);
}
