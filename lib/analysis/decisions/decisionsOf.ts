import { addMonths, formatISO, parseISO } from 'date-fns';
import { comingOverhauls, noChanges } from '../plan/comingOverhauls';
import type { Planning, PlanningUnit } from '../plan/planning';
import type { ComingOverhaul, UnitOverhauls } from '../plan/types';
import { defaultDecisionSettings } from './defaultDecisionSettings';
import { renewedAt, type SeriesState, seriesStateNow } from './seriesState';
import type { Decision, DecisionSettings } from './types';
import { type UnitState, unitDecision } from './unitDecision';

/**
 * What to do at the next overhaul of every unit, however far ahead it lies, and at every later one within the horizon, in order of
 * unit and day; a unit without any is listed with the reason.
 *
 * Chances come from the mixtures themselves, not from draws. A later overhaul supposes that the advice for the earlier ones is
 * followed on their planned days. Throws unless 0 < accepted risk < 1.
 */
export function decisionsOf(
  planning: Planning,
  settings: DecisionSettings = defaultDecisionSettings,
): readonly Decision[] {
  if (!(settings.acceptedRisk > 0 && settings.acceptedRisk < 1)) {
    throw new Error(`decisionsOf requires an accepted risk inside 0 to 1, got ${settings.acceptedRisk}`);
  }
  const until = formatISO(addMonths(parseISO(planning.asOf), settings.horizonMonths), {
    representation: 'date',
  });
  return planning.units.flatMap((unit) => {
    // A unit may have to be opened within the horizon although its overhaul is planned after it.
    const [, last = until] = [until, unit.plan.unit.row.nextOverhaulDate ?? until].sort();
    const coming = comingOverhauls(unit.plan, planning.asOf, last, noChanges);
    return coming.overhauls.length === 0
      ? [withoutOverhaul(unit, coming, planning.asOf)]
      : unitDecisions(unit, coming, planning.asOf, settings.acceptedRisk);
  });
}

function unitDecisions(
  unit: PlanningUnit,
  coming: UnitOverhauls,
  asOf: string,
  acceptedRisk: number,
): readonly Decision[] {
  let state: UnitState = {
    unit,
    series: unit.series.map(seriesStateNow),
    from_h: unit.plan.unit.hoursNow,
    lifeEnd_h: unit.plan.unit.ratedLife_h,
  };
  return coming.overhauls.map((overhaul, index) => {
    const decision = unitDecision(state, overhaul, index + 1, asOf, acceptedRisk, coming.reason);
    state = after(state, overhaul, decision);
    return decision;
  });
}

/** The unit after the overhaul: what assembly resets and what the fitted parts renew starts anew. */
function after(state: UnitState, overhaul: ComingOverhaul, decision: Decision): UnitState {
  const { unitHours } = overhaul;
  if (unitHours === null) return state;
  const fitted = new Set(decision.parts.map(({ part }) => part));
  const renew = (series: SeriesState) =>
    !series.plan.byPart || series.plan.parts.some((part) => fitted.has(part)) || calledFor(series, decision)
      ? renewedAt(series, unitHours)
      : series;
  const life = decision.parts.some(({ because }) => because === 'rated life');
  return {
    ...state,
    from_h: unitHours,
    series: state.series.map((series) => ('reason' in series ? series : renew(series))),
    lifeEnd_h:
      life && state.lifeEnd_h !== null
        ? unitHours + (state.unit.plan.unit.ratedLife_h ?? 0)
        : state.lifeEnd_h,
  };
}

/** A part-reset series without a known part is renewed by whatever its limit's reset rule means. */
function calledFor({ plan }: SeriesState, decision: Decision): boolean {
  const own = decision.series.find((one) => one.series === plan.series && one.limitKind === plan.side);
  return plan.partToFit === null && (own?.action === 'fit new part' || own?.action === 'bring forward');
}

function withoutOverhaul({ plan }: PlanningUnit, { reason }: UnitOverhauls, asOf: string): Decision {
  const { unit, group, engine, bank, ratedLifeDate } = plan.unit.row;
  return {
    unit,
    group,
    engine,
    bank,
    overhaul: 1,
    date: null,
    unitHours: null,
    followingDate: null,
    action: null,
    bringForwardTo: null,
    chanceBefore: null,
    chanceRunningOn: null,
    drivenBy: null,
    series: [],
    parts: [],
    ratedLifeEnds: ratedLifeDate !== null && ratedLifeDate < asOf ? asOf : ratedLifeDate,
    reason,
  };
}
