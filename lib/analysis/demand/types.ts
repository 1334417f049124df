import type { Pieces } from '../plan/planning';
import type { PlanChanges, PlanMessage } from '../plan/types';

/** Choices of the spares page. */
export interface SparesSettings {
  /** Chance, for each limit, of passing it before the following overhaul above which a part is replaced. */
  readonly acceptedRisk: number;
  /** Chance with which stock should meet demand. */
  readonly serviceLevel: number;
  /** Time between two looks at the stock: an order must last over lead time plus this. */
  readonly reviewPeriod_weeks: number;
  readonly leadTimeFactor: number;
  readonly horizonYears: number;
  readonly changes: PlanChanges;
}

/** Demand of a part in a quarter, pieces. */
export interface DemandRow {
  readonly part: string;
  /** For example '2027-Q1'. */
  readonly quarter: string;
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly p95: number;
  /** Chance of at least k pieces, k = 0, 1, ... up to the most drawn (at most 50). */
  readonly chanceOfAtLeast: readonly number[];
}

/** Chance that a unit passes a limit in service in the interval that ends at an overhaul. */
export interface IntervalChance {
  readonly unit: string;
  readonly group: string;
  readonly endsOn: string;
  readonly chance: number;
}

/** What to order of one part. */
export interface OrderRow {
  readonly part: string;
  readonly name: string | null;
  readonly onHand: number;
  readonly onOrder: number;
  readonly due: string | null;
  readonly leadTime_weeks: number | null;
  /** First day on which demand exceeds what is on hand and due with more than 1 - service level; null: not within the horizon. */
  readonly shortOn: string | null;
  /** Last order day: shortOn less the lead time. It may be past; null where it cannot be told or nothing is short. */
  readonly orderBy: string | null;
  /** The last order day is past. */
  readonly late: boolean;
  /** Pieces that restore the service level over lead time plus review period from the order; 0 where nothing is short. */
  readonly quantity: number;
  /** Pieces expected to be lacking by the end of that time if none are ordered. */
  readonly expectedShortage: number;
  readonly demandMean: number;
  readonly demandP90: number;
  readonly cost: number | null;
  readonly currency: string | null;
  readonly reason: string;
}

/** Stock of a part at the end of a day if nothing is ordered; negative where pieces are lacking. */
export interface StockRow {
  readonly part: string;
  readonly date: string;
  readonly median: number;
  /** So many or more are left with a chance of the service level. */
  readonly atServiceLevel: number;
}

/** Money of a calendar year in one currency; the first year starts on the day asked on, the last one ends with the horizon. */
export interface BudgetRow {
  readonly year: string;
  readonly currency: string;
  /** Cost of the orders whose last order day lies in the year. */
  readonly ordered: number;
  /** Cost of the parts fitted in the year, over the draws. */
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly p95: number;
}

/** One group at one interval between overhauls. */
export interface IntervalWear {
  readonly group: string;
  readonly interval_h: number;
  /** Most units of the group are planned with this interval. */
  readonly planned: boolean;
  /** Longer than the run hours that readings of every limited series reach. */
  readonly extrapolated: boolean;
  /** Chance that a unit passes a limit in service within an interval. */
  readonly chance: number;
  readonly overhaulsAYear: number;
  readonly exceedancesAYear: number;
  readonly partsAYear: readonly Pieces[];
}

/** Money of one currency. */
export interface CurrencyTotal {
  readonly currency: string;
  readonly cost: number;
}

/** The spares of a fleet: demand, orders, and how often a limit is passed in service. */
export interface Spares {
  readonly asOf: string;
  readonly until: string;
  readonly settings: SparesSettings;
  readonly draws: number;
  readonly seed: number;
  readonly demand: readonly DemandRow[];
  readonly orders: readonly OrderRow[];
  /** Stock of every part at the end of each quarter. */
  readonly stock: readonly StockRow[];
  readonly budget: readonly BudgetRow[];
  readonly exceedances: readonly IntervalChance[];
  /** Expected number of unit intervals within the horizon in which a limit is passed in service. */
  readonly expectedExceedances: number;
  readonly overhauls: number;
  /** Cost of the orders, one sum a currency: currencies are never added up. */
  readonly totals: readonly CurrencyTotal[];
  readonly messages: readonly PlanMessage[];
}
