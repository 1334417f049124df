import { drawFleet } from '../demand/drawnFleet';
import { walkUnit } from '../demand/walkUnit';
import type { PlanningUnit } from '../plan/planning';
import type { SheetPart } from './types';
import type { UnitBench } from './unitBench';

/** Draws that a chance is counted in: its standard error is at most 1.6 %. */
const draws = 1_000;

/**
 * Parts that an overhaul at the given hours may take, the likeliest first: the share of seeded draws of the unit in which the
 * readings as found call for each, as in the demand for spares; what every overhaul takes has a chance of 1. Null where the
 * series that it renews has no forecast or the hours are not known.
 */
export function partChances(
  { planning, parts, unit }: UnitBench,
  unitHours: number | null,
  acceptedRisk: number,
): readonly SheetPart[] {
  if (planning === null) return [];
  const nameOf = (part: string) => parts.find((one) => one.part === part)?.name ?? null;
  const following = followingHours(planning, unitHours);
  const life_h = unit.ratedLife_h;
  const endsLife = life_h !== null && unitHours !== null && (unitHours >= life_h || following > life_h);
  const chances = drawnChances(planning, unitHours, following, acceptedRisk, endsLife);
  const rotating = planning.rotatingPart?.part ?? null;
  const named = [...planning.series.map(({ partToFit }) => partToFit), rotating];
  const worn = [...new Set(named.filter((part) => part !== null))].map(
    (part): SheetPart => ({
      part,
      name: nameOf(part),
      pieces: planning.pieces.get(part) ?? 1,
      chance: chances.get(part) ?? null,
      because: part === rotating && endsLife ? 'rated life' : 'limit',
    }),
  );
  const always = planning.consumables.map(
    ({ part, pieces }): SheetPart => ({
      part,
      name: nameOf(part),
      pieces,
      chance: 1,
      because: 'every overhaul',
    }),
  );
  return [...worn.sort((a, b) => (b.chance ?? -1) - (a.chance ?? -1)), ...always];
}

/** Unit hours of the overhaul after this one; NaN if none is planned. */
function followingHours({ plan }: PlanningUnit, unitHours: number | null): number {
  return unitHours === null || plan.interval_h === null ? Number.NaN : unitHours + plan.interval_h;
}

function drawnChances(
  planning: PlanningUnit,
  unitHours: number | null,
  following: number,
  acceptedRisk: number,
  endsLife: boolean,
): ReadonlyMap<string, number> {
  const ofUnit = { asOf: '', units: [planning], parts: [], messages: [] };
  const drawn = unitHours === null ? undefined : drawFleet(ofUnit, { draws }).units[0];
  if (drawn === undefined || unitHours === null) return new Map();
  const walk = walkUnit(drawn, draws, {
    hours: Float64Array.of(unitHours),
    following: Float64Array.of(following),
    acceptedRisk,
    from: 'now',
  });
  const forecast = new Set(drawn.series.map(({ plan }) => plan.partToFit));
  const rotating = planning.rotatingPart?.part;
  return new Map(
    walk.parts.flatMap((part, index) => {
      if (!forecast.has(part) && !(endsLife && part === rotating)) return [];
      const count = walk.fitted[index]?.reduce((sum, one) => sum + one, 0) ?? 0;
      return [[part, count / draws] as const];
    }),
  );
}
