import { runLevel } from '../stats/wear/runLevel';
import type { LineMixture, WearPosterior, WearStatistics } from '../stats/wear/types';
import type { LimitInForce, RunNow } from '../store/questions';
import { type GroupFit, runIndexOf } from './groupFits';
import type { QuarterAhead } from './isoDate';
import type { UnitNow } from './unitNow';

/** What a margin is computed from. */
export interface MarginQuestion {
  readonly unit: UnitNow;
  readonly series: string;
  readonly fit: GroupFit | null;
  readonly run: RunNow | null;
  readonly limit: LimitInForce | null;
  readonly asOf: string;
  /** Days at which the chance is wanted for the strips; the same for every unit. */
  readonly quarters: readonly QuarterAhead[];
}

/** Where the run that the unit is in now stands in its group's statistics; null for a unit or run without readings. */
interface CurrentRun {
  readonly posterior: WearPosterior;
  readonly statistics: WearStatistics;
  readonly unit: number | null;
  readonly run: number | null;
  /** Unit hours at which it started. */
  readonly start_h: number;
  readonly runHours: number;
}

/** The run that the unit is in now, or the reason why its line cannot be told. */
export function currentRun(question: MarginQuestion): CurrentRun | { readonly reason: string } {
  const { unit, fit, run } = question;
  if (unit.row.overhauls === 0 || run === null) return { reason: 'no overhaul of the unit in the files' };
  if (run.start_hours < 0)
    return {
      reason: 'an overhaul of the unit is held, so when its run started is not known: settle that row first',
    };
  if (fit === null) return { reason: `no reading of this series in the sister group ${unit.row.group}` };
  const { posterior, statistics } = fit;
  if (posterior === null) return { reason: fit.row.reason ?? 'the sister group has no fit' };
  if (unit.hoursNow === null) return { reason: 'the hours of the unit are not known' };
  return {
    posterior,
    statistics,
    unit: fit.unitIndex.get(unit.row.unit) ?? null,
    run: runIndexOf(fit, unit.row.unit, run.run),
    start_h: run.start_hours,
    runHours: Math.max(0, unit.hoursNow - run.start_hours),
  };
}

/** Start and slope of the run that the unit is in now, or the reason why they cannot be told. */
export function currentLine(
  question: MarginQuestion,
): (CurrentRun & { readonly line: LineMixture }) | { readonly reason: string } {
  const current = currentRun(question);
  if ('reason' in current) return current;
  const { posterior, statistics, unit, run } = current;
  return { ...current, line: runLevel(posterior, statistics, unit, run) };
}
