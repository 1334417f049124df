import { min } from 'd3-array';
import { defaultDraws } from '../../analysis/demand/drawnFleet';
import { yearsCharted } from '../../analysis/drift/driftResult';
import type { ChartThreshold } from '../../stats/charts/thresholdForBudget';
import type { Connector } from '../../store/Connector';
import { openNodeDatabase } from '../../store/nodeDatabase';
import { guessedThresholds } from './fleetThresholds';
import { lookThrough, seenTablesSql } from './lookThrough';
import type { DataFolder } from './readDataFolder';

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
  /** Parts that cannot be read together with others: they have further tables, or names of overhauls or engines that others have too. */
  readonly alone: ReadonlySet<string>;
}

/** Tables whose rows mean the same beside those of other parts. */
const ofUnitsOnly: readonly (string | null)[] = ['units', 'overhauls', 'readings', 'plan'];

/**
 * Looks through the units and days of all parts, without any check of cells.
 *
 * The facts are a guess that spares a second reading: what an import finds afterwards is what counts.
 */
export async function surveyParts({ shared, parts }: DataFolder, asOf: string | null): Promise<Survey> {
  const database = await openNodeDatabase();
  try {
    const connector = await database.connect();
    await connector.run(seenTablesSql);
    const alone = new Set<string>();
    for (const { part, table } of await lookThrough(connector, { shared, parts }))
      if (part !== '' && !ofUnitsOnly.includes(table)) alone.add(part);
    const repeated = await connector.query(
      'SELECT DISTINCT part FROM seen_names SEMI JOIN (SELECT name FROM seen_names GROUP BY name HAVING count(DISTINCT part) > 1) USING (name)',
    );
    for (const { part } of repeated) alone.add(String(part));
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
      alone,
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
