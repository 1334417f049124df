import { rollup } from 'd3-array';
import { anyOf, wholePercents } from '../combineChances';
import type { PlanningUnit } from '../plan/planning';
import type { SeriesPlan } from '../plan/seriesPlans';
import type { ComingOverhaul } from '../plan/types';
import { dateAtHours } from '../unitNow';
import { seriesDecision } from './seriesDecision';
import type { SeriesState } from './seriesState';
import { type Action, actions, type Decision, type PartWanted, type SeriesDecision } from './types';

/** A unit on its way through its planned overhauls. */
export interface UnitState {
  readonly unit: PlanningUnit;
  readonly series: readonly (SeriesState | { readonly plan: SeriesPlan; readonly reason: string })[];
  readonly from_h: number | null;
  /** Unit hours at which the rated life ends; null if none is stated. */
  readonly lifeEnd_h: number | null;
}

/** What to do with a unit at one planned overhaul: the weightiest of what its limits and its rated life ask for. */
export function unitDecision(
  state: UnitState,
  overhaul: ComingOverhaul,
  number: number,
  asOf: string,
  acceptedRisk: number,
  reason: string | null,
): Decision {
  const { plan } = state.unit;
  const { row } = plan.unit;
  const series = state.series.map((one) => seriesOf(one, state, overhaul, asOf, acceptedRisk));
  const life = ratedLife(state, overhaul, asOf);
  const asked = [...series].sort(byWeight);
  const weightiest = asked.find((one) => one.action !== null) ?? null;
  const lifeFirst = life !== null && weight(life.action) >= weight(weightiest?.action ?? null);
  const action = lifeFirst ? life.action : (weightiest?.action ?? null);
  const dates = [
    ...series.filter((one) => one.action === 'bring forward').map((one) => one.bringForwardTo),
    life?.bringForwardTo ?? null,
  ];
  return {
    unit: row.unit,
    group: row.group,
    engine: row.engine,
    bank: row.bank,
    overhaul: number,
    date: overhaul.date,
    unitHours: overhaul.unitHours,
    followingDate: overhaul.followingDate,
    action,
    bringForwardTo:
      action === 'bring forward' ? (dates.filter((date) => date !== null).sort()[0] ?? null) : null,
    chanceBefore: ofUnit(state, series, (one) => one.chanceBefore),
    chanceRunningOn: ofUnit(state, series, (one) => one.chanceRunningOn),
    drivenBy: lifeFirst
      ? 'rated life'
      : weightiest === null || outOfSight(weightiest)
        ? null
        : weightiest.series,
    series: asked,
    parts: partsWanted(state, series, life !== null),
    ratedLifeEnds: life?.endsOn ?? null,
    reason:
      reason ??
      (action === null ? (asked[0]?.reason ?? 'no limit in limits.csv for its frame: no verdict') : null),
  };
}

function seriesOf(
  one: UnitState['series'][number],
  { unit, from_h }: UnitState,
  overhaul: ComingOverhaul,
  asOf: string,
  acceptedRisk: number,
): SeriesDecision {
  const { unitHours } = overhaul;
  if (!('reason' in one) && unitHours !== null && from_h !== null) {
    return seriesDecision(one, {
      unit: unit.plan.unit,
      asOf,
      from_h,
      overhaul: { ...overhaul, unitHours },
      acceptedRisk,
    });
  }
  const { series, side, limit_mm } = one.plan;
  return {
    series,
    limitKind: side,
    limit_mm,
    action: null,
    chanceBefore: null,
    chanceRunningOn: null,
    chanceRenewed: null,
    bringForwardTo: null,
    doubt: null,
    reason: 'reason' in one ? one.reason : 'the hours of the unit at the overhaul are not known',
  };
}

/** Rated life that ends before the overhaul asks to bring it forward; before the following one, for a new rotating part. */
function ratedLife(
  { unit, lifeEnd_h }: UnitState,
  { unitHours, followingHours }: ComingOverhaul,
  asOf: string,
): {
  readonly action: Action;
  readonly bringForwardTo: string | null;
  readonly endsOn: string | null;
} | null {
  if (lifeEnd_h === null || unitHours === null) return null;
  if ((followingHours ?? unitHours) <= lifeEnd_h && unitHours < lifeEnd_h) return null;
  const { hoursNow, hoursPerYear } = unit.plan.unit;
  const endsOn = dateAtHours(Math.max(lifeEnd_h, hoursNow ?? 0), hoursNow, hoursPerYear, asOf);
  const early = unitHours > lifeEnd_h;
  return { action: early ? 'bring forward' : 'fit new part', bringForwardTo: early ? endsOn : null, endsOn };
}

function weight(action: Action | null): number {
  return action === null ? -1 : actions.indexOf(action);
}

/** A limit that is run on towards with under 1 % does not drive anything. */
function outOfSight({ action, chanceBefore, chanceRunningOn }: SeriesDecision): boolean {
  return action === 'run on' && wholePercents(Math.max(chanceBefore ?? 0, chanceRunningOn ?? 0)) === 0;
}

/** Weightier actions first, then the earlier day, then the larger chance. */
function byWeight(a: SeriesDecision, b: SeriesDecision): number {
  const first = weight(b.action) - weight(a.action);
  if (first !== 0) return first;
  if (a.bringForwardTo !== null && b.bringForwardTo !== null && a.bringForwardTo !== b.bringForwardTo) {
    return a.bringForwardTo < b.bringForwardTo ? -1 : 1;
  }
  return (
    Math.max(b.chanceBefore ?? 0, b.chanceRunningOn ?? 0) -
    Math.max(a.chanceBefore ?? 0, a.chanceRunningOn ?? 0)
  );
}

/** The largest chance of each characteristic, then that of any of them; see combineChances. */
function ofUnit(
  { series: states }: UnitState,
  series: readonly SeriesDecision[],
  chance: (one: SeriesDecision) => number | null,
): number | null {
  const known = series.flatMap((one, index) => {
    const value = chance(one);
    const characteristic = states[index]?.plan.characteristic ?? one.series;
    return value === null ? [] : [{ characteristic, value }];
  });
  if (known.length === 0) return null;
  const largest = rollup(
    known,
    (own) => Math.max(...own.map(({ value }) => value)),
    (one) => one.characteristic,
  );
  return anyOf(largest.values());
}

/** Parts to have at the overhaul: what limits and rated life call for, and what every overhaul takes. */
function partsWanted(
  { unit, series: states }: UnitState,
  series: readonly SeriesDecision[],
  lifeEnds: boolean,
): readonly PartWanted[] {
  const wanted = new Map<string, string[]>();
  series.forEach((one, index) => {
    const part = states[index]?.plan.partToFit;
    if (part == null || !(one.action === 'fit new part' || one.action === 'bring forward')) return;
    wanted.set(part, [...(wanted.get(part) ?? []), one.series]);
  });
  const parts: PartWanted[] = [...wanted].map(([part, own]) => ({
    part,
    pieces: unit.pieces.get(part) ?? 1,
    because: 'limit',
    series: own,
  }));
  if (lifeEnds && unit.rotatingPart !== null) {
    const { part, pieces } = unit.rotatingPart;
    const known = parts.findIndex((one) => one.part === part);
    if (known >= 0) parts.splice(known, 1);
    parts.push({ part, pieces, because: 'rated life', series: wanted.get(part) ?? [] });
  }
  return [
    ...parts,
    ...unit.consumables.map(({ part, pieces }) => ({
      part,
      pieces,
      because: 'every overhaul' as const,
      series: [],
    })),
  ];
}
