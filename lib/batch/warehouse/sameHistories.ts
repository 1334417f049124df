import { z } from 'zod';
import type { Connector } from '../../store/Connector';
import { queryRows } from '../../store/queryRows';
import {
  type UnitHistory,
  unitHistory,
  type Warehouse,
  WarehouseError,
  type WarehouseQuestion,
} from './Warehouse';

/** The sums of every unit's cut by the overhauls beside the batch, as the warehouse gives them for its own. */
const ownHistoriesSql = `
  SELECT unit, count(*)::DOUBLE AS openings, sum(date - DATE '1970-01-01')::DOUBLE AS days, coalesce(sum(unit_hours), 0)::DOUBLE AS hours,
    coalesce(sum(run_left) FILTER (NOT lost), 0)::DOUBLE AS runs, coalesce(sum(start_left) FILTER (NOT lost), 0)::DOUBLE AS "startHours"
  FROM opening_resets GROUP BY unit ORDER BY unit`;

const tiesSql = `
  SELECT DISTINCT unit, CAST(date AS VARCHAR) AS date FROM openings WHERE NOT lost GROUP BY unit, date, unit_hours HAVING count(*) > 1 ORDER BY 1, 2`;

const sums = ['openings', 'days', 'hours', 'runs', 'startHours'] as const;
const namedAtMost = 5;

function agree(ours: UnitHistory | undefined, theirs: UnitHistory): boolean {
  return (
    ours !== undefined &&
    sums.every((sum) => Math.abs(ours[sum] - theirs[sum]) <= 1e-9 * Math.max(1, Math.abs(ours[sum])))
  );
}

function named(units: readonly string[]): string {
  const more = units.length > namedAtMost ? ` and ${units.length - namedAtMost} more` : '';
  return `${units.slice(0, namedAtMost).join(', ')}${more}`;
}

/**
 * Makes sure that the warehouse cuts every history into the same runs as the batch, whose overhauls say which run a unit is in
 * now: forecasts would otherwise start from another run than the one that the statistics are of.
 *
 * @throws WarehouseError that names units whose overhauls or frames differ, or whose order cannot be told
 */
export async function checkSameHistories(
  connector: Connector,
  warehouse: Warehouse,
  question: WarehouseQuestion,
): Promise<void> {
  const ties = await queryRows(connector, tiesSql, z.object({ unit: z.string(), date: z.string() }));
  if (ties.length > 0)
    throw new WarehouseError(
      `Overhauls of one unit on one day at the same hours have no order by which ${warehouse.name} could cut runs: ${named(ties.map(({ unit, date }) => `${unit} on ${date}`))}. Put them together or correct their hours`,
    );
  const own = await queryRows(connector, ownHistoriesSql, unitHistory);
  const left = new Map(own.map((one) => [one.unit, one]));
  const differing: string[] = [];
  for (const theirs of await warehouse.histories(question)) {
    if (!agree(left.get(theirs.unit), theirs)) differing.push(theirs.unit);
    // Taken out, so that a unit whose rows lie in two partitions is found at its second coming.
    left.delete(theirs.unit);
  }
  const units = [...new Set([...differing, ...left.keys()])].sort();
  if (units.length > 0)
    throw new WarehouseError(
      `The overhauls, frames or fitted parts of ${units.length} of ${own.length} units differ between --data and ${warehouse.name}: ${named(units)}. Load both from the same records, each unit into one partition, and settle held rows of overhauls`,
    );
}
