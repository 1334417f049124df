import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import type { Difference, WhatIf } from '../../lib/analysis/demand/whatIf';
import { formatCount, formatDate } from '../../lib/charts/format';
import { counted } from './counted';

/** Money such as '12 345 EUR'. */
export function moneyWords(cost: number | null, currency: string | null): string | null {
  return cost === null || currency === null ? null : `${formatCount(Math.round(cost))}\u00a0${currency}`;
}

/** A part by code and name. */
export function partWords({ part, name }: Pick<OrderRow, 'part' | 'name'>): string {
  return name === null ? part : `${part} (${name})`;
}

/** Orders to place, the most urgent first. */
export function ordersDue({ orders }: Spares): readonly OrderRow[] {
  return orders
    .filter(({ quantity, orderBy }) => quantity > 0 && orderBy !== null)
    .toSorted((a, b) => ((a.orderBy ?? '') < (b.orderBy ?? '') ? -1 : 1));
}

/** The answer of the Spares page: what to order, by which day, what is late, and the money. */
export function sparesSentence(spares: Spares): string {
  if (spares.orders.length === 0)
    return 'No part is on record, so nothing can be said of spares: add parts.csv with stock, lead times and prices on the Records page.';
  if (spares.overhauls === 0)
    return 'No overhaul is planned within the horizon, so no demand can be told: add plan.csv on the Records page.';
  const due = ordersDue(spares);
  const first = due[0];
  if (first === undefined)
    return `Nothing needs ordering: what is on hand and due meets the demand up to ${spares.until} with a chance of ${percents(spares.settings.serviceLevel)}.`;
  const late = due.filter((order) => order.late);
  const cost = spares.totals.map(({ cost: sum, currency }) => moneyWords(sum, currency)).join(' and ');
  const lateWords =
    late.length === 0
      ? `the first is ${formatCount(first.quantity)} of ${partWords(first)} by ${formatDate(first.orderBy)}`
      : `${counted(late.length, 'order is', 'orders are')} already late: ${late.map(({ part, quantity }) => `${formatCount(quantity)} of ${part}`).join(', ')}`;
  return `${counted(due.length, 'part')} to order${cost === '' ? '' : ` for ${cost}`}; ${lateWords}.`;
}

/** Expected exceedances and overhauls behind the orders, in words. */
export function planSentence({ overhauls, expectedExceedances, until, settings, draws }: Spares): string {
  return `${counted(overhauls, 'overhaul')} up to ${until}, ${counted(draws, 'draw')} of the fleet with one seed. Replacing at an accepted risk of ${percents(settings.acceptedRisk)}, ${expectedExceedances.toFixed(1)} of the units’ intervals are expected to pass a limit in service.`;
}

/** A share in percent without decimals. */
export function percents(share: number): string {
  return `${formatCount(Math.round(share * 100))}\u00a0%`;
}

/** A change from one number to another: '138 to 121'. */
export function changeWords<T>({ present, changed }: Difference<T>, write: (value: T) => string): string {
  const [before, after] = [write(present), write(changed)];
  return before === after ? `${before}, unchanged` : `${before} to ${after}`;
}

/** What a change of the plan does, in a sentence. */
export function whatIfSentence({ parts, overhauls, expectedExceedances, totals }: WhatIf): string {
  const money = totals.map(({ currency, cost }) =>
    changeWords(cost, (value) => moneyWords(value, currency) ?? '–'),
  );
  return `Overhauls ${changeWords(overhauls, formatCount)}; intervals expected to pass a limit in service ${changeWords(expectedExceedances, (value) => value.toFixed(1))}; cost of orders ${money.length === 0 ? 'not known' : money.join(' and ')}; ${counted(parts.length, 'part')} changed.`;
}
