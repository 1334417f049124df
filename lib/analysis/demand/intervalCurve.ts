import type { PartStock } from '../plan/partStocks';
import type { IntervalWear } from './types';

/** What an overhaul without its parts, and a limit passed in service, cost, in one currency. */
export interface IntervalCosts {
  readonly overhaul: number;
  readonly exceedance: number;
  readonly currency: string;
}

/** One group at one interval, with what it costs. */
export interface IntervalPoint extends IntervalWear {
  /** Null without costs, or where a part that is fitted has no price in that currency. */
  readonly costAYear: number | null;
}

/** Adds what overhauls, limits passed in service and the parts fitted cost a year. */
export function intervalCurve(
  points: readonly IntervalWear[],
  parts: readonly PartStock[],
  costs: IntervalCosts | null,
): readonly IntervalPoint[] {
  const prices = new Map(
    parts.map((part) => [part.part, part.currency === costs?.currency ? part.unitCost : null]),
  );
  return points.map((point) => {
    if (costs === null) return { ...point, costAYear: null };
    const partsCost = point.partsAYear.reduce<number | null>((sum, { part, pieces }) => {
      const price = prices.get(part) ?? null;
      return sum === null || price === null ? null : sum + price * pieces;
    }, 0);
    const { overhaulsAYear, exceedancesAYear } = point;
    return {
      ...point,
      costAYear:
        partsCost === null
          ? null
          : partsCost + overhaulsAYear * costs.overhaul + exceedancesAYear * costs.exceedance,
    };
  });
}
