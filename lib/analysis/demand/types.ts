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
  readonly exceedances: readonly IntervalChance[];
  /** Expected number of unit intervals within the horizon in which a limit is passed in service. */
  readonly expectedExceedances: number;
  readonly overhauls: number;
  /** Cost of the orders, one sum a currency: currencies are never added up. */
  readonly totals: readonly CurrencyTotal[];
  readonly messages: readonly PlanMessage[];
}
