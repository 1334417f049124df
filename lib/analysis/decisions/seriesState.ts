import { crossings } from '../../stats/wear/crossing';
import { chancePast } from '../../stats/wear/forecast';
import { runLevel } from '../../stats/wear/runLevel';
import type { LineMixture } from '../../stats/wear/types';
import { currentLine } from '../currentLine';
import type { SeriesPlan } from '../plan/seriesPlans';

/** A series on its way through the planned overhauls: the run it is in and when that started. */
export interface SeriesState {
  readonly plan: SeriesPlan;
  readonly line: LineMixture;
  /** A new run of the unit. */
  readonly fresh: LineMixture;
  readonly start_h: number;
  /** Readings in the present run; null in a run to come. */
  readonly readings: number | null;
}

/** The state on the day, or why there is none. */
export function seriesStateNow(
  plan: SeriesPlan,
): SeriesState | { readonly plan: SeriesPlan; readonly reason: string } {
  const { question } = plan;
  const current = currentLine(question);
  if ('reason' in current) return { plan, reason: current.reason };
  const { posterior, statistics, unit, run } = current;
  return {
    plan,
    line: current.line,
    fresh: runLevel(posterior, statistics, unit, null),
    start_h: current.start_h,
    readings: run === null ? 0 : (statistics.count[run] as number),
  };
}

/** The state after the series was renewed at the given unit hours. */
export function renewedAt(state: SeriesState, unitHours: number): SeriesState {
  return { ...state, line: state.fresh, start_h: unitHours, readings: null };
}

/** Chance of being past the limit at the given unit hours, in the run that the state is in. */
export function chanceAt({ plan, line, start_h }: SeriesState, unitHours: number): number {
  return chancePast(line, plan.limit_mm, plan.side, Math.max(0, unitHours - start_h) / 10_000);
}

/** Unit hours up to which the chance of being past stays within the accepted risk, looked for from one to another. */
export function hoursWithinRisk(
  state: SeriesState,
  acceptedRisk: number,
  from_h: number,
  to_h: number,
): number {
  const { plan, line, start_h } = state;
  const [x] = crossings(
    line,
    plan.limit_mm,
    plan.side,
    [acceptedRisk],
    Math.max(0, from_h - start_h) / 10_000,
    Math.max(0, to_h - start_h) / 10_000,
  );
  return x == null ? to_h : start_h + 10_000 * x;
}
