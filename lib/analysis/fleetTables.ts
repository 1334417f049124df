import type { Spares } from './demand/types';
import { chances, hours, lengths, rounded } from './fileNumbers';
import type { FleetResult } from './types';

/** A cell as it goes to a file; null where it is empty. */
export type Cell = string | number | boolean | null;

/** One table of results as it goes to a CSV file. */
export interface ResultTable {
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Fit of every group and series: fits.csv. sd_start_mm is the root of the summed squares of the unit's and the run's. */
export function fitsTable(fleet: Pick<FleetResult, 'fits'>): ResultTable {
  return {
    name: 'fits',
    header: [
      'group',
      'series',
      'runs',
      'units',
      'readings',
      'intercept_mm',
      'slope_mm_per_10kh',
      'sd_noise_mm',
      'sd_start_mm',
      'sd_slope_unit',
      'sd_slope_run',
      'reml_criterion',
      'boundary',
      'converged',
    ],
    rows: fleet.fits.map((fit) => [
      fit.group,
      fit.series,
      fit.runs,
      fit.units,
      fit.readings,
      lengths(fit.intercept_mm),
      lengths(fit.slope_mm_per_10kh),
      lengths(fit.sdNoise_mm),
      lengths(fit.sdStart_mm),
      lengths(fit.sdSlopeUnit_mm_per_10kh),
      lengths(fit.sdSlopeRun_mm_per_10kh),
      rounded(fit.remlCriterion, 10),
      fit.boundary.join(';'),
      fit.converged,
    ]),
  };
}

/** Margin of every unit, series and limit: margins.csv. */
export function marginsTable(fleet: Pick<FleetResult, 'margins'>): ResultTable {
  return {
    name: 'margins',
    header: [
      'unit',
      'group',
      'series',
      'limit_kind',
      'limit_mm',
      'run_hours',
      'level_mm',
      'level_sd_mm',
      'slope_mm_per_10kh',
      'slope_sd',
      'margin_mm',
      'hours_early',
      'hours_median',
      'hours_late',
      'date_early',
      'date_median',
      'date_late',
      'next_overhaul_date',
      'chance_at_next_overhaul',
      'expected_found_lower',
      'expected_found_median',
      'expected_found_upper',
      'capped_by_rated_life',
      'reason',
    ],
    rows: fleet.margins.map((margin) => [
      margin.unit,
      margin.group,
      margin.series,
      margin.limitKind,
      margin.limit_mm,
      hours(margin.runHours),
      lengths(margin.level_mm),
      lengths(margin.levelSd_mm),
      lengths(margin.slope_mm_per_10kh),
      lengths(margin.slopeSd_mm_per_10kh),
      lengths(margin.margin_mm),
      hours(margin.hoursEarly),
      hours(margin.hoursMedian),
      hours(margin.hoursLate),
      margin.dateEarly,
      margin.dateMedian,
      margin.dateLate,
      margin.nextOverhaulDate,
      chances(margin.chanceAtNextOverhaul),
      lengths(margin.expectedFoundLower_mm),
      lengths(margin.expectedFoundMedian_mm),
      lengths(margin.expectedFoundUpper_mm),
      margin.cappedByRatedLife,
      margin.reason,
    ]),
  };
}

/** Demand of every part and quarter, pieces: demand.csv. */
export function demandTable({ demand }: Pick<Spares, 'demand'>): ResultTable {
  return {
    name: 'demand',
    header: ['part', 'quarter', 'mean', 'p10', 'p50', 'p90', 'p95'],
    rows: demand.map(({ part, quarter, mean, p10, p50, p90, p95 }) => [
      part,
      quarter,
      ...[mean, p10, p50, p90, p95].map(chances),
    ]),
  };
}

/** What to order of every part, the last order day (which may be past) and why: orders.csv. */
export function ordersTable({ orders }: Pick<Spares, 'orders'>): ResultTable {
  return {
    name: 'orders',
    header: ['part', 'quantity', 'order_by', 'reason'],
    rows: orders.map(({ part, quantity, orderBy, reason }) => [part, quantity, orderBy, reason]),
  };
}

/** Every held or interpreted row and cell: problems.csv. */
export function problemsTable(fleet: Pick<FleetResult, 'problems'>): ResultTable {
  return {
    name: 'problems',
    header: ['file', 'row', 'column', 'raw', 'reason', 'action'],
    rows: fleet.problems.map((problem) => [
      problem.file,
      problem.row,
      problem.column,
      problem.raw,
      problem.reason,
      problem.action,
    ]),
  };
}
