import type { PlanMessage } from '../plan/types';
import type { DrawnFleet } from './drawnFleet';
import { sparesOf } from './sparesOf';
import type { CurrencyTotal, OrderRow, Spares, SparesSettings } from './types';

/** A number under the present plan and under the changed one. */
export interface Difference<T = number> {
  readonly present: T;
  readonly changed: T;
}

/** What a change does to one part; parts that it leaves alone are not listed. */
export interface PartDifference {
  readonly part: string;
  readonly demandMean: Difference;
  readonly demandP90: Difference;
  readonly quantity: Difference;
  readonly orderBy: Difference<string | null>;
  readonly cost: Difference<number | null>;
  readonly currency: string | null;
}

/** The changed plan beside the present one. */
export interface WhatIf {
  readonly changed: Spares;
  readonly parts: readonly PartDifference[];
  readonly overhauls: Difference;
  readonly expectedExceedances: Difference;
  readonly totals: readonly { readonly currency: string; readonly cost: Difference }[];
  /** What the changed plan lacks and the present one does not. */
  readonly messages: readonly PlanMessage[];
}

/**
 * Walks a changed plan through the draws that the present one was walked through, so that what differs is the change and not chance.
 *
 * @param present spares of the same fleet under the present plan
 */
export function whatIf(fleet: DrawnFleet, present: Spares, change: Partial<SparesSettings>): WhatIf {
  const changed = sparesOf(fleet, { ...present.settings, ...change });
  const of = <T>(value: (spares: Spares) => T): Difference<T> => ({
    present: value(present),
    changed: value(changed),
  });
  const nameOf = ({ about, name, text }: PlanMessage) => `${about}\u0000${name}\u0000${text}`;
  const known = new Set(present.messages.map(nameOf));
  const orders = new Map(changed.orders.map((order) => [order.part, order]));
  const currencies = [
    ...new Set([...present.totals, ...changed.totals].map(({ currency }) => currency)),
  ].sort();
  const costIn = (totals: readonly CurrencyTotal[], currency: string) =>
    totals.find((total) => total.currency === currency)?.cost ?? 0;
  return {
    changed,
    parts: present.orders.flatMap((order) => {
      const other = orders.get(order.part);
      return other === undefined ? [] : (partDifference(order, other) ?? []);
    }),
    overhauls: of((spares) => spares.overhauls),
    expectedExceedances: of((spares) => spares.expectedExceedances),
    totals: currencies.map((currency) => ({ currency, cost: of(({ totals }) => costIn(totals, currency)) })),
    messages: changed.messages.filter((message) => !known.has(nameOf(message))),
  };
}

function partDifference(present: OrderRow, changed: OrderRow): PartDifference | null {
  const of = <T>(value: (order: OrderRow) => T): Difference<T> => ({
    present: value(present),
    changed: value(changed),
  });
  const row: PartDifference = {
    part: present.part,
    demandMean: of((order) => order.demandMean),
    demandP90: of((order) => order.demandP90),
    quantity: of((order) => order.quantity),
    orderBy: of((order) => order.orderBy),
    cost: of((order) => order.cost),
    currency: present.currency,
  };
  const { demandMean, demandP90, quantity, orderBy } = row;
  const same = [demandMean, demandP90, quantity, orderBy].every((one) => one.present === one.changed);
  return same ? null : row;
}
