import { group } from 'd3-array';
import { meanOfDraws } from './drawnCounts';
import type { DrawnFleet, DrawnUnit } from './drawnFleet';
import { walkUnit } from './walkUnit';

/** What an overhaul and a limit passed in service cost, in one currency. */
export interface IntervalCosts {
  readonly overhaul: number;
  readonly exceedance: number;
  readonly currency: string;
}

/** One group at one interval. */
export interface IntervalPoint {
  readonly group: string;
  readonly interval_h: number;
  /** Chance that a unit passes a limit in service within an interval. */
  readonly chance: number;
  readonly overhaulsAYear: number;
  /** Null without costs, or where a part that is fitted has no price in that currency. */
  readonly costAYear: number | null;
}

/** Intervals looked at, h. */
export const intervalGrid_h: readonly number[] = Array.from({ length: 17 }, (_, k) => 8_000 + 1_000 * k);

/** Intervals that each unit is carried through from new. */
const intervals = 4;
/** The curve needs fewer draws than an order. */
const mostDraws = 200;

/**
 * Chance of an in-service exceedance and overhauls a year against the interval between overhauls, for every group.
 *
 * Every unit that runs is carried through four equal intervals from new, its parts replaced by the same rule as in the plan.
 * A comparison of intervals by wear alone: it never authorises a longer one.
 */
export function intervalCurve(
  fleet: DrawnFleet,
  acceptedRisk: number,
  costs: IntervalCosts | null = null,
  grid_h: readonly number[] = intervalGrid_h,
): readonly IntervalPoint[] {
  const running = fleet.units.filter(
    ({ unit, series }) => series.length > 0 && (unit.plan.unit.hoursPerYear ?? 0) > 0,
  );
  const groups = [...group(running, ({ unit }) => unit.plan.unit.row.group)].sort(([a], [b]) =>
    a < b ? -1 : 1,
  );
  return groups.flatMap(([name, units]) =>
    grid_h.map((interval_h) => intervalPoint(fleet, name, units, interval_h, acceptedRisk, costs)),
  );
}

function intervalPoint(
  fleet: DrawnFleet,
  name: string,
  units: readonly DrawnUnit[],
  interval_h: number,
  acceptedRisk: number,
  costs: IntervalCosts | null,
): IntervalPoint {
  const draws = Math.min(mostDraws, fleet.draws);
  const hours = Float64Array.from({ length: intervals }, (_, k) => interval_h * (k + 1));
  const following = hours.map((h) => h + interval_h);
  const prices = new Map(
    fleet.planning.parts.map((part) => [part.part, part.currency === costs?.currency ? part.unitCost : null]),
  );
  let exceeded = 0;
  let overhaulsAYear = 0;
  let costAYear: number | null = costs === null ? null : 0;
  for (const drawn of units) {
    const { unit } = drawn;
    const walk = walkUnit(drawn, draws, { hours, following, acceptedRisk, from: 'new' });
    const chance = meanOfDraws(walk.exceeded) / draws;
    const aYear = (unit.plan.unit.hoursPerYear ?? 0) / interval_h;
    const pieces = unit.consumables.map((one) => ({ ...one }));
    walk.fitted.forEach((fitted, at) => {
      const part = walk.parts[at % walk.parts.length] as string;
      if (fitted !== null)
        pieces.push({ part, pieces: ((unit.pieces.get(part) ?? 1) * meanOfDraws(fitted)) / intervals });
    });
    const partsCost = pieces.reduce<number | null>((sum, one) => {
      const price = prices.get(one.part) ?? null;
      return sum === null || price === null ? null : sum + price * one.pieces;
    }, 0);
    exceeded += chance;
    overhaulsAYear += aYear;
    costAYear =
      costAYear === null || costs === null || partsCost === null
        ? null
        : costAYear + aYear * (costs.overhaul + partsCost + chance * costs.exceedance);
  }
  return { group: name, interval_h, chance: exceeded / units.length, overhaulsAYear, costAYear };
}
