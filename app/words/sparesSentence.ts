import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import type { Difference, WhatIf } from '../../lib/analysis/demand/whatIf';
import { formatCount, formatDate, formatFixed, formatPercent, formatPieces } from '../../lib/charts/format';
import { counted } from './counted';
import { namesWords } from './namesWords';

/** Said where orders would stand. */
export const noParts = 'No part is on record: add parts.csv on the Records page.';

/** Parts that a sentence names; the others are counted. */
const mostNamed = 4;

/** Money such as '12 345 EUR'. */
export function moneyWords(cost: number | null, currency: string | null): string | null {
  return cost === null || currency === null ? null : `${formatCount(Math.round(cost))}\u00a0${currency}`;
}

/** A part by code and name. */
export function partWords({ part, name }: Pick<OrderRow, 'part' | 'name'>): string {
  return name === null ? part : `${part} (${name})`;
}

/** Orders to place, the most urgent first; those whose day cannot be told at the end. */
export function ordersDue({ orders }: Pick<Spares, 'orders'>): readonly OrderRow[] {
  return orders
    .filter(({ quantity }) => quantity > 0)
    .toSorted((a, b) => ((a.orderBy ?? '9999') < (b.orderBy ?? '9999') ? -1 : 1));
}

function ofPart({ quantity, part }: OrderRow): string {
  return `${formatPieces(quantity)} of ${part}`;
}

/** The answer of the Spares page: what to order, by which day, what is late, and the money. */
export function sparesSentence(spares: Spares): string {
  if (spares.orders.length === 0)
    return 'No part is on record, so nothing can be said of spares: add parts.csv with stock, lead times and prices on the Records page.';
  if (spares.overhauls === 0)
    return 'No overhaul is planned within the horizon, so no demand can be told: add plan.csv on the Records page.';
  const due = ordersDue(spares);
  if (due.length === 0) {
    const lacking = spares.messages.length === 0 ? '' : ' This leaves out what is listed below as lacking.';
    return `Nothing needs ordering: what is on hand and due meets the demand up to ${formatDate(spares.until)} with a chance of ${formatPercent(spares.settings.serviceLevel)}.${lacking}`;
  }
  const money = spares.totals.filter(({ cost }) => cost > 0);
  const cost = money.map(({ cost: sum, currency }) => moneyWords(sum, currency)).join(' and ');
  const unpriced = due.filter((order) => order.cost === null).length;
  const late = due.filter((order) => order.late);
  const undated = due.filter(({ orderBy }) => orderBy === null);
  const next = due.find((order) => !order.late && order.orderBy !== null);
  const sentences = [
    `${counted(due.length, 'part')} to order${cost === '' ? '' : ` for ${cost}`}${unpriced === 0 ? '' : `, ${formatCount(unpriced)} of them without a price`}`,
    late.length > 0 &&
      `${counted(late.length, 'order is', 'orders are')} already late: ${namesWords(late.map(ofPart), mostNamed)}`,
    next !== undefined &&
      `the ${late.length > 0 ? 'next' : 'first'} is ${formatPieces(next.quantity)} of ${partWords(next)} by ${formatDate(next.orderBy)}`,
    undated.length > 0 &&
      `without a lead time no day can be told for ${namesWords(undated.map(ofPart), mostNamed)}`,
  ];
  return `${sentences.filter((sentence) => sentence !== false).join('; ')}.`;
}

/** Expected exceedances and overhauls behind the orders, in words. */
export function planSentence({ overhauls, expectedExceedances, until, settings, draws }: Spares): string {
  return `${counted(overhauls, 'overhaul')} up to ${formatDate(until)}, ${counted(draws, 'draw')} of the fleet with one seed. Replacing at an accepted risk of ${formatPercent(settings.acceptedRisk)}, ${formatFixed(expectedExceedances, 1)} of the units’ intervals are expected to pass a limit in service. Service level ${formatPercent(settings.serviceLevel)}, stock looked at every ${counted(settings.reviewPeriod_weeks, 'week')}.`;
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
  return `Overhauls ${changeWords(overhauls, formatCount)}; intervals expected to pass a limit in service ${changeWords(expectedExceedances, (value) => formatFixed(value, 1))}; cost of orders ${money.length === 0 ? 'not known' : money.join(' and ')}; ${counted(parts.length, 'part')} changed.`;
}
