import { z } from 'zod';

/** A rule by which the histories of a frame's units are cut into runs. */
export interface ResetRule {
  readonly rule: number;
  readonly frame: string;
  /** Codes of the parts whose fitting starts a new run; empty where every overhaul does. */
  readonly partCodes: readonly string[];
}

/** What is measured on the units of a frame, and the rule that cuts its series. */
export interface Measured {
  readonly frame: string;
  readonly characteristic: string;
  readonly rule: number;
  readonly isFourClock: boolean;
  readonly isNeverNegative: boolean;
}

/** Everything that a warehouse must be told beside its own tables. */
export interface WarehouseQuestion {
  /** YYYY-MM-DD; later readings are not used. */
  readonly asOf: string;
  readonly rules: readonly ResetRule[];
  readonly measured: readonly Measured[];
}

/**
 * Columns of the statistics, a row a unit, series, run and spread: count, means and centred sums of x in 10,000 run hours
 * and y in mm. `spread_mm2` is the variance that an interval reading adds, 0 for a plain one: readings of one spread
 * have one weight, so that the batch can weigh them once it knows the noise of their group. `readings` are the rows of
 * the readings table behind it, counted once where four positions give several series.
 *
 * Rows with an empty unit count readings that no series uses; `series` is then one of `unusedReasons`.
 */
export const statisticsColumns = [
  'unit',
  'series',
  'run',
  'spread_mm2',
  'count',
  'mean_x',
  'mean_y',
  'sxx_c',
  'sxy_c',
  'syy_c',
  'min_x',
  'max_x',
  'readings',
] as const;

/** Cells in order of `statisticsColumns`, as the warehouse wrote them, so that no digit is lost. */
export type StatisticsCells = readonly string[];

/** Sums over all overhauls and rules of a unit, by which two cuts of one history are told apart. */
export const unitHistory = z.object({
  unit: z.string(),
  /** Overhauls times rules. */
  openings: z.number(),
  /** Days since 1970-01-01. */
  days: z.number(),
  hours: z.number(),
  runs: z.number(),
  /** Unit hours at the starts of the runs. */
  startHours: z.number(),
});
export type UnitHistory = z.output<typeof unitHistory>;

/** An engine that holds units, overhauls and readings, and computes where they are. */
export interface Warehouse {
  /** As sentences name it. */
  readonly name: string;
  /** Rows of the readings table, in all partitions. */
  countReadings(): Promise<number>;
  /** What every history comes to when the warehouse cuts it. */
  histories(question: WarehouseQuestion): Promise<readonly UnitHistory[]>;
  /** Statistics of every run, batch by batch; ends only when every partition has answered in full, else throws. */
  runStatistics(question: WarehouseQuestion): AsyncIterable<readonly StatisticsCells[]>;
  close(): Promise<void>;
}

/** The warehouse cannot be used as it is; says what happened and what to do. */
export class WarehouseError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'WarehouseError';
  }
}
