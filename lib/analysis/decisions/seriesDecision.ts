import type { ComingOverhaul } from '../plan/types';
import { dateAtHours, type UnitNow } from '../unitNow';
import { chanceAt, hoursWithinRisk, renewedAt, type SeriesState } from './seriesState';
import type { Action, Doubt, SeriesDecision } from './types';
import { worthReading } from './worthReading';

/** A unit on its way to a planned overhaul. */
export interface Stretch {
  readonly unit: UnitNow;
  readonly asOf: string;
  /** Unit hours from which the overhaul may be brought forward: now, or the overhaul before. */
  readonly from_h: number;
  readonly overhaul: ComingOverhaul & { readonly unitHours: number };
  readonly acceptedRisk: number;
}

/**
 * What one limit asks for at a planned overhaul.
 *
 * Bring forward: the chance of passing it before the overhaul exceeds the accepted risk. Otherwise, if it is passed before the following
 * overhaul with more than the accepted risk: fit the part that renews it, or correct it at assembly. Measure again takes the
 * place of any of them at the next overhaul if a reading is worth it, see worthReading. Without a following overhaul the
 * chance of running on is that at the overhaul itself.
 */
export function seriesDecision(state: SeriesState, stretch: Stretch): SeriesDecision {
  const { plan } = state;
  const { overhaul, acceptedRisk, from_h } = stretch;
  const { unitHours, followingHours } = overhaul;
  const chanceBefore = chanceAt(state, unitHours);
  const renewed = renewedAt(state, unitHours);
  const chanceRenewed = followingHours === null ? null : chanceAt(renewed, followingHours);
  const chanceRunningOn =
    plan.byPart && followingHours !== null
      ? chanceAt(state, followingHours)
      : plan.byPart
        ? null
        : chanceRenewed;
  const early = chanceBefore > acceptedRisk;
  const within_h = early ? hoursWithinRisk(state, acceptedRisk, from_h, unitHours) : unitHours;
  const doubt = doubtOf(state, stretch);
  return {
    series: plan.series,
    limitKind: plan.side,
    limit_mm: plan.limit_mm,
    action: doubt !== null ? 'measure again' : actionOf(state, early, (chanceRunningOn ?? 0) > acceptedRisk),
    chanceBefore,
    chanceRunningOn,
    chanceRenewed,
    bringForwardTo: early ? dateOf(within_h, stretch) : null,
    doubt,
    reason:
      followingHours === null
        ? 'no interval in plan.csv: how long it runs after this overhaul is not known'
        : null,
  };
}

function actionOf({ plan }: SeriesState, early: boolean, pastBeforeFollowing: boolean): Action {
  if (early) return 'bring forward';
  if (!pastBeforeFollowing) return 'run on';
  return plan.byPart ? 'fit new part' : 'correct at assembly';
}

function dateOf(unitHours: number, { unit, asOf, overhaul }: Stretch): string {
  return dateAtHours(unitHours, unit.hoursNow, unit.hoursPerYear, asOf) ?? overhaul.date;
}

/** Whether a reading is asked for, and what the level is known from; only in the run that the unit is in. */
function doubtOf(state: SeriesState, { unit, overhaul, acceptedRisk }: Stretch): Doubt | null {
  const { plan, readings, line, start_h } = state;
  if (readings === null || unit.hoursNow === null) return null;
  const decision_h = plan.byPart ? (overhaul.followingHours ?? overhaul.unitHours) : overhaul.unitHours;
  const sign = plan.side === 'upper' ? 1 : -1;
  const x = (hours: number) => Math.max(0, hours - start_h) / 10_000;
  if (!worthReading(line, plan.limit_mm, sign, x(unit.hoursNow), x(decision_h), acceptedRisk)) return null;
  if (readings === 0) return 'no reading in the run';
  return readings === 1 ? 'one reading in the run' : 'wide interval';
}
