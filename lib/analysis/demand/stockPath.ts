import { isoDatePlus } from '../isoDate';
import type { PartStock } from '../plan/partStocks';
import { shareAbove } from './drawnCounts';
import type { DemandEvent } from './simulateFleet';

/** Shares of draws carry rounding. */
const ROUNDING = 1e-12;

/** Stock of one part against its demand in every draw; days are counted from the day asked on. */
export interface StockPath {
  /** First day, not before the given one, on which demand up to then exceeds the stock with more than 1 - service level; null if none. */
  firstShort(fromDay: number, serviceLevel: number): number | null;
  /** Most by which demand exceeds the stock on any day from one to another, in every draw; negative where stock is left. */
  lacking(fromDay: number, untilDay: number): Float64Array;
}

/** Pieces on hand and come in by the end of a day, if none were used. */
export function stockOn({ onHand, onOrder, due }: PartStock, date: string): number {
  return onHand + (due !== null && due <= date ? onOrder : 0);
}

/** Follows what is on hand and comes in, and the demand of the events (in order of day), through time. */
export function stockPath(
  part: PartStock,
  events: readonly DemandEvent[],
  draws: number,
  asOf: string,
): StockPath {
  const stock = (day: number) => stockOn(part, isoDatePlus(asOf, day));
  /** Visits the demand so far, at the end of the first day and of every later day with an event. */
  const follow = (
    fromDay: number,
    untilDay: number,
    visit: (day: number, demand: Float64Array) => boolean,
  ) => {
    const demand = new Float64Array(draws);
    let next = 0;
    for (let day = fromDay; day <= untilDay; day = events[next]?.day ?? Number.POSITIVE_INFINITY) {
      for (; next < events.length && (events[next] as DemandEvent).day <= day; next++)
        addTo(demand, events[next] as DemandEvent);
      if (visit(day, demand)) return day;
    }
    return null;
  };
  return {
    firstShort(fromDay, serviceLevel) {
      const short = (day: number, demand: Float64Array) =>
        shareAbove(demand, stock(day)) > 1 - serviceLevel + ROUNDING;
      return follow(fromDay, Number.MAX_SAFE_INTEGER, short);
    },
    lacking(fromDay, untilDay) {
      const most = new Float64Array(draws).fill(Number.NEGATIVE_INFINITY);
      follow(fromDay, Math.max(fromDay, untilDay), (day, demand) => {
        const had = stock(day);
        for (let draw = 0; draw < draws; draw++)
          most[draw] = Math.max(most[draw] as number, (demand[draw] as number) - had);
        return false;
      });
      return most;
    },
  };
}

/** Adds the pieces of an event to the demand of every draw in which the part is fitted. */
export function addTo(demand: Float64Array, { fitted, pieces }: DemandEvent): void {
  for (let draw = 0; draw < demand.length; draw++) {
    demand[draw] = (demand[draw] as number) + (fitted === null ? pieces : pieces * (fitted[draw] as number));
  }
}
