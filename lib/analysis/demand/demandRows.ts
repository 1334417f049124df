import { getQuarter, getYear, parseISO } from 'date-fns';
import { quartersAfter } from '../isoDate';
import { countQuantileOfDraws, meanOfDraws, shareAbove } from './drawnCounts';
import type { DemandEvent } from './simulateFleet';
import { addTo } from './stockPath';
import type { DemandRow } from './types';

/** Longest list of chances of at least k pieces. */
const mostChances = 50;

/** Name of the quarter that a day lies in, for example '2027-Q1'. */
export function quarterOf(date: string): string {
  const day = parseISO(date);
  return `${getYear(day)}-Q${getQuarter(day)}`;
}

/** Names of the quarters from one day to another, both included. */
export function quartersBetween(from: string, until: string): readonly string[] {
  const names = [quarterOf(from)];
  const last = quarterOf(until);
  for (const { date } of quartersAfter(from, 4 * 40)) {
    if (names.at(-1) === last) break;
    names.push(quarterOf(date));
  }
  return names;
}

/** Pieces wanted in every draw by the events together. */
export function piecesByDraw(events: readonly DemandEvent[], draws: number): Float64Array {
  const demand = new Float64Array(draws);
  for (const event of events) addTo(demand, event);
  return demand;
}

/** Demand of one part in every quarter: mean, quantiles and chances over the draws. */
export function demandRows(
  part: string,
  events: readonly DemandEvent[],
  quarters: readonly string[],
  draws: number,
): readonly DemandRow[] {
  const byQuarter = new Map<string, DemandEvent[]>(quarters.map((quarter) => [quarter, []]));
  for (const event of events) byQuarter.get(quarterOf(event.date))?.push(event);
  return [...byQuarter].map(([quarter, own]) => {
    const counts = piecesByDraw(own, draws);
    const mean = meanOfDraws(counts);
    const sorted = counts.sort();
    const most = Math.min(mostChances, Math.floor(sorted.at(-1) ?? 0));
    const at = (level: number) => countQuantileOfDraws(sorted, level);
    return {
      part,
      quarter,
      mean,
      p10: at(0.1),
      p50: at(0.5),
      p90: at(0.9),
      p95: at(0.95),
      chanceOfAtLeast: Array.from({ length: most + 1 }, (_, k) =>
        k === 0 ? 1 : shareAbove(sorted, k - 1e-9),
      ),
    };
  });
}
