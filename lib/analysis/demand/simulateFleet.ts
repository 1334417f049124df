import { daysPerYear, isoDatePlus } from '../isoDate';
import { comingOverhauls } from '../plan/comingOverhauls';
import type { ComingOverhaul, UnitOverhauls } from '../plan/types';
import type { DrawnFleet, DrawnUnit } from './drawnFleet';
import type { IntervalChance, SparesSettings } from './types';
import { walkUnit } from './walkUnit';

/** Demand of one part at one overhaul. */
export interface DemandEvent {
  readonly date: string;
  readonly day: number;
  readonly unit: string;
  /** Pieces fitted where the part is fitted. */
  readonly pieces: number;
  /** 1 for each draw in which it is fitted (a count where it stands for several units); null: in all. */
  readonly fitted: ArrayLike<number> | null;
}

/** What the fleet needs in every draw. */
export interface FleetSimulation {
  readonly until: string;
  /** Demand of every part in order of day. */
  readonly events: ReadonlyMap<string, readonly DemandEvent[]>;
  readonly exceedances: readonly IntervalChance[];
  readonly plans: readonly UnitOverhauls[];
}

/** Carries the whole fleet through its planned overhauls in every draw; throws if a setting is out of range. */
export function simulateFleet(fleet: DrawnFleet, settings: SparesSettings): FleetSimulation {
  checkSettings(settings);
  const { asOf } = fleet.planning;
  const until = isoDatePlus(asOf, settings.horizonYears * daysPerYear);
  const events = new Map<string, DemandEvent[]>();
  const exceedances: IntervalChance[] = [];
  const plans: UnitOverhauls[] = [];
  for (const drawn of fleet.units) {
    const plan = comingOverhauls(drawn.unit.plan, asOf, until, settings.changes);
    plans.push(plan);
    addConsumables(events, drawn, plan.overhauls);
    const known = plan.overhauls.filter((overhaul) => overhaul.unitHours !== null);
    if (known.length > 0) addWear(events, exceedances, drawn, known, fleet.draws, settings);
  }
  for (const list of events.values()) list.sort((a, b) => a.day - b.day || (a.unit < b.unit ? -1 : 1));
  return { until, events, exceedances, plans };
}

function checkSettings({
  acceptedRisk,
  serviceLevel,
  reviewPeriod_weeks,
  leadTimeFactor,
  horizonYears,
}: SparesSettings): void {
  for (const [name, value] of [
    ['accepted risk', acceptedRisk],
    ['service level', serviceLevel],
  ] as const) {
    if (!(value > 0 && value < 1))
      throw new Error(`simulateFleet requires an ${name} inside 0 to 1, got ${value}`);
  }
  if (!(horizonYears > 0 && horizonYears <= 30)) {
    throw new Error(`simulateFleet requires a horizon of up to 30 years, got ${horizonYears}`);
  }
  if (!(reviewPeriod_weeks >= 0 && leadTimeFactor >= 0)) {
    throw new Error(
      `simulateFleet requires no negative time, got ${reviewPeriod_weeks} weeks, lead time factor ${leadTimeFactor}`,
    );
  }
}

function add(events: Map<string, DemandEvent[]>, part: string, event: DemandEvent): void {
  const list = events.get(part);
  if (list === undefined) events.set(part, [event]);
  else list.push(event);
}

function addConsumables(
  events: Map<string, DemandEvent[]>,
  { unit }: DrawnUnit,
  overhauls: readonly ComingOverhaul[],
): void {
  for (const { part, pieces } of unit.consumables) {
    for (const { date, day } of overhauls)
      add(events, part, { date, day, unit: unit.plan.unit.row.unit, pieces, fitted: null });
  }
}

function addWear(
  events: Map<string, DemandEvent[]>,
  exceedances: IntervalChance[],
  drawn: DrawnUnit,
  overhauls: readonly ComingOverhaul[],
  draws: number,
  { acceptedRisk }: SparesSettings,
): void {
  const { row } = drawn.unit.plan.unit;
  const hours = Float64Array.from(overhauls, (overhaul) => overhaul.unitHours ?? Number.NaN);
  const following = Float64Array.from(overhauls, (overhaul) => overhaul.followingHours ?? Number.NaN);
  const walk = walkUnit(drawn, draws, { hours, following, acceptedRisk, from: 'now' });
  overhauls.forEach(({ date, day }, j) => {
    if (drawn.series.length > 0) {
      exceedances.push({
        unit: row.unit,
        group: row.group,
        endsOn: date,
        chance: (walk.exceeded[j] as number) / draws,
      });
    }
    walk.parts.forEach((part, p) => {
      const fitted = walk.fitted[j * walk.parts.length + p] ?? null;
      const pieces = drawn.unit.pieces.get(part) ?? 1;
      if (fitted !== null && pieces > 0) add(events, part, { date, day, unit: row.unit, pieces, fitted });
    });
  });
}
