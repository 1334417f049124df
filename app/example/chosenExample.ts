import type { Decision, PartWanted } from '../../lib/analysis/decisions/types';
import type { OrderRow } from '../../lib/analysis/demand/types';
import type { FleetRow } from '../fleet/fleetRows';

/** The unit that the example follows: as far as a part to be ordered, if there is one. */
export interface Example {
  readonly row: FleetRow;
  /** What to do at its next overhaul; null if nothing is said of it. */
  readonly decision: Decision | null;
  readonly wanted: PartWanted | null;
  readonly order: OrderRow | null;
  /** The series that calls for the part, else the one that decides; null if the unit has none with a limit. */
  readonly series: string | null;
}

/**
 * The first of Fleet's order whose next overhaul needs a part on account of a limit that has to be ordered; where there is none,
 * the first unit of all, without a part; null in a fleet without units.
 *
 * @param rows in Fleet's order
 */
export function chosenExample(
  rows: readonly FleetRow[],
  decisions: readonly Decision[],
  orders: readonly OrderRow[],
): Example | null {
  const next = new Map(decisions.filter(({ overhaul }) => overhaul === 1).map((one) => [one.unit, one]));
  const toOrder = new Map(orders.filter(({ quantity }) => quantity > 0).map((one) => [one.part, one]));
  for (const row of rows) {
    const decision = next.get(row.unit.unit) ?? null;
    const wanted = decision?.parts.find(
      ({ part, because, series }) => because === 'limit' && series.length > 0 && toOrder.has(part),
    );
    if (decision === null || wanted === undefined) continue;
    const driver = wanted.series.find((series) => series === decision.drivenBy) ?? wanted.series[0] ?? null;
    return { row, decision, wanted, order: toOrder.get(wanted.part) ?? null, series: driver };
  }
  const [first] = rows;
  if (first === undefined) return null;
  return {
    row: first,
    decision: next.get(first.unit.unit) ?? null,
    wanted: null,
    order: null,
    series: first.outlook.deciding?.series ?? null,
  };
}
