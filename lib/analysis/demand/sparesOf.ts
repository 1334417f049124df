import { group } from 'd3-array';
import type { PlanMessage } from '../plan/types';
import { budgetRows } from './budgetRows';
import { defaultSparesSettings } from './defaultSparesSettings';
import { demandRows, quartersBetween } from './demandRows';
import type { DrawnFleet } from './drawnFleet';
import { orderRow } from './orderRow';
import { simulateFleet } from './simulateFleet';
import { stockRows } from './stockRows';
import type { CurrencyTotal, OrderRow, Spares, SparesSettings } from './types';

/**
 * Demand, orders and in-service exceedances of the fleet under its plan: a pure function of the draws and the settings.
 *
 * What a unit, a part or a group lacks is said once in messages and the rest is computed. Throws if a setting is out of range.
 */
export function sparesOf(fleet: DrawnFleet, settings: SparesSettings = defaultSparesSettings): Spares {
  const { planning, draws, seed } = fleet;
  const { asOf } = planning;
  const { until, events, exceedances, plans } = simulateFleet(fleet, settings);
  const quarters = quartersBetween(asOf, until);
  const parts = planning.parts.toSorted((a, b) => (a.part < b.part ? -1 : 1));
  const demandOf = (part: string) => events.get(part) ?? [];
  const orders = parts.map((part) => orderRow(part, demandOf(part.part), draws, asOf, until, settings));
  const planMessages: PlanMessage[] = plans.flatMap(({ plan, reason }) =>
    reason === null ? [] : [{ about: 'unit', name: plan.unit.row.unit, text: reason }],
  );
  return {
    asOf,
    until,
    settings,
    draws,
    seed,
    demand: parts.flatMap(({ part }) => demandRows(part, demandOf(part), quarters, draws)),
    orders,
    stock: parts.flatMap((part) =>
      stockRows(part, demandOf(part.part), draws, asOf, until, settings.serviceLevel),
    ),
    budget: budgetRows(parts, events, orders, draws, asOf, until),
    exceedances,
    expectedExceedances: exceedances.reduce((sum, { chance }) => sum + chance, 0),
    overhauls: plans.reduce((sum, { overhauls }) => sum + overhauls.length, 0),
    totals: totalsOf(orders),
    messages: [...planning.messages, ...planMessages],
  };
}

/** Cost of orders, one sum a currency. */
export function totalsOf(orders: readonly OrderRow[]): readonly CurrencyTotal[] {
  const priced = orders.flatMap(({ cost, currency }) =>
    cost === null || currency === null ? [] : [{ currency, cost }],
  );
  return [...group(priced, (one) => one.currency)]
    .map(([currency, own]) => ({ currency, cost: own.reduce((sum, one) => sum + one.cost, 0) }))
    .sort((a, b) => (a.currency < b.currency ? -1 : 1));
}
