import { endOfQuarter, formatISO, parseISO } from 'date-fns';
import { daysBetween, quartersAfter } from '../isoDate';
import type { PartStock } from '../plan/partStocks';
import { countQuantileOfDraws } from './drawnCounts';
import type { DemandEvent } from './simulateFleet';
import { addTo, stockOn } from './stockPath';
import type { StockRow } from './types';

/** Last days of the quarters from one day to another; the last quarter ends with the other day. */
function quarterEnds(asOf: string, until: string): readonly string[] {
  const ends = [asOf, ...quartersAfter(asOf, 4 * 40).map(({ date }) => date)].map((date) =>
    formatISO(endOfQuarter(parseISO(date)), { representation: 'date' }),
  );
  return [...ends.filter((end) => end < until), until];
}

/**
 * Pieces of a part left at the end of each quarter if nothing is ordered: median over the draws, and what is left or more with a
 * chance of the service level. Negative where parts are lacking.
 *
 * @param events demand of the part in order of day
 */
export function stockRows(
  part: PartStock,
  events: readonly DemandEvent[],
  draws: number,
  asOf: string,
  until: string,
  serviceLevel: number,
): readonly StockRow[] {
  const demand = new Float64Array(draws);
  let sorted = demand.slice();
  let next = 0;
  return quarterEnds(asOf, until).map((date) => {
    const day = daysBetween(asOf, date);
    const before = next;
    for (; next < events.length && (events[next] as DemandEvent).day <= day; next++)
      addTo(demand, events[next] as DemandEvent);
    if (next > before) sorted = demand.slice().sort();
    const stock = stockOn(part, date);
    return {
      part: part.part,
      date,
      median: stock - countQuantileOfDraws(sorted, 0.5),
      atServiceLevel: stock - countQuantileOfDraws(sorted, serviceLevel),
    };
  });
}
