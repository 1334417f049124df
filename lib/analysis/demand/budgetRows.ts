import type { PartStock } from '../plan/partStocks';
import { countQuantileOfDraws, meanOfDraws } from './drawnCounts';
import type { DemandEvent } from './simulateFleet';
import { addTo } from './stockPath';
import type { BudgetRow, OrderRow } from './types';

/** Cost of a year in one currency, in every draw, and of the orders to place in it. */
interface Year {
  readonly fitted: Float64Array;
  ordered: number;
}

/**
 * Money by calendar year and currency: what the parts fitted in it cost, with its spread over the draws, and what the orders cost
 * whose last order day lies in it; a day that is past counts today. Parts without a price are left out.
 */
export function budgetRows(
  parts: readonly PartStock[],
  events: ReadonlyMap<string, readonly DemandEvent[]>,
  orders: readonly OrderRow[],
  draws: number,
  asOf: string,
  until: string,
): readonly BudgetRow[] {
  const currencies = [...new Set(parts.flatMap(({ currency }) => currency ?? []))].sort();
  const years: string[] = [];
  for (let year = Number(asOf.slice(0, 4)); year <= Number(until.slice(0, 4)); year++)
    years.push(String(year));
  const made = new Map<string, Year>();
  const yearOf = (year: string, currency: string) => {
    const known = made.get(`${year} ${currency}`) ?? { fitted: new Float64Array(draws), ordered: 0 };
    made.set(`${year} ${currency}`, known);
    return known;
  };
  for (const { part, unitCost, currency } of parts) {
    if (unitCost === null || currency === null) continue;
    for (const event of events.get(part) ?? []) {
      const { fitted } = yearOf(event.date.slice(0, 4), currency);
      addTo(fitted, { ...event, pieces: event.pieces * unitCost });
    }
  }
  for (const { cost, currency, orderBy } of orders) {
    if (cost === null || currency === null || orderBy === null) continue;
    yearOf((orderBy < asOf ? asOf : orderBy).slice(0, 4), currency).ordered += cost;
  }
  return years.flatMap((year) =>
    currencies.map((currency) => {
      const { fitted, ordered } = yearOf(year, currency);
      const mean = meanOfDraws(fitted);
      const sorted = fitted.sort();
      const at = (level: number) => countQuantileOfDraws(sorted, level);
      return { year, currency, ordered, mean, p10: at(0.1), p50: at(0.5), p90: at(0.9), p95: at(0.95) };
    }),
  );
}
