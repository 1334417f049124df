import { dayOf } from './days';
import { drawsFor } from './draws';
import { hoursRun } from './meters';
import { move } from './oddities';
import { type Opening, openingsOf } from './schedule';
import { type Engine, exampleEngines, type Frame, fleetEngines, serialOf } from './stations';

/** One stay of a unit in a position. */
export interface Stay {
  readonly unit: string;
  readonly engine: Engine;
  readonly bank: string;
  readonly fromDay: number;
  readonly toDay: number | null;
  readonly unitHoursAtFit: number;
}

/** One record of a unit: its delivery or an overhaul. */
export interface Visit {
  readonly unit: string;
  readonly frame: Frame;
  readonly engine: Engine;
  readonly bank: string;
  readonly day: number;
  readonly unitHours: number;
  readonly opening: Opening | null;
}

export interface Fleet {
  readonly stays: readonly Stay[];
  /** Records by unit, in order; the first is the delivery. */
  readonly visits: ReadonlyMap<string, readonly Visit[]>;
}

/** Hours of the unit on a day of its stay. */
export function unitHoursAt(stay: Stay, day: number): number {
  return stay.unitHoursAtFit + hoursRun(stay.engine, day) - hoursRun(stay.engine, stay.fromDay);
}

/** The demo fleet: who sits where and when, and when each unit is opened. */
export function buildFleet(): Fleet {
  return fleetOf(withMove(firstStays(fleetEngines)));
}

/** The few units of the example sheet. */
export function buildExample(): Fleet {
  return fleetOf(firstStays(exampleEngines));
}

function fleetOf(stays: readonly Stay[]): Fleet {
  const visits = new Map<string, readonly Visit[]>();
  for (const unit of [...new Set(stays.map((stay) => stay.unit))].sort()) {
    visits.set(unit, visitsOf(stays.filter((stay) => stay.unit === unit)));
  }
  return { stays, visits };
}

function firstStays(engines: readonly Engine[]): readonly Stay[] {
  const next: Record<Frame, number> = { Lark: 1, Heron: 1, Osprey: 1, Kestrel: 1 };
  return engines.flatMap((engine) =>
    engine.banks.map((bank) => ({
      unit: serialOf(engine.frame, next[engine.frame]++),
      engine,
      bank,
      fromDay: dayOf(engine.commissioned),
      toDay: null,
      unitHoursAtFit: 0,
    })),
  );
}

/** Applies the one exchange of the fleet: three units, two engines. */
function withMove(stays: readonly Stay[]): readonly Stay[] {
  const find = (unit: string) => {
    const stay = stays.find((candidate) => candidate.unit === unit);
    if (stay === undefined) throw new Error(`withMove requires a unit of the demo fleet, got '${unit}'`);
    return stay;
  };
  const leaving = find(move.unit);
  const stored = find(move.leftInStore);
  const outDay = dayOfPlanned(leaving.engine, (_, index) => index === move.from.visit - 1);
  const inDay = dayOfPlanned(stored.engine, (opening) => opening.day > outDay);
  const fitted = { engine: stored.engine, bank: stored.bank, fromDay: inDay, toDay: null };
  return [
    ...stays.map((stay) => {
      if (stay === leaving) return { ...stay, toDay: outDay };
      return stay === stored ? { ...stay, toDay: inDay } : stay;
    }),
    { ...leaving, unit: move.replacedBy, fromDay: outDay },
    { ...fitted, unit: move.unit, unitHoursAtFit: unitHoursAt(leaving, outDay) },
  ];
}

function dayOfPlanned(engine: Engine, which: (opening: Opening, index: number) => boolean): number {
  const found = openingsOf(engine)
    .filter((opening) => opening.kind === 'planned')
    .find(which);
  if (found === undefined) throw new Error(`dayOfPlanned requires a planned overhaul of ${engine.engine}`);
  return found.day;
}

function visitsOf(stays: readonly Stay[]): readonly Visit[] {
  const first = stays[0];
  if (first === undefined) return [];
  const frame = first.engine.frame;
  const delivered = first.fromDay - 20 - Math.floor(60 * drawsFor(`delivery/${first.unit}`).uniform());
  const delivery: Visit = { ...place(first), frame, day: delivered, unitHours: 0, opening: null };
  const overhauls = stays.flatMap((stay) =>
    openingsOf(stay.engine)
      .filter((opening) => opening.banks.includes(stay.bank))
      .filter(({ day }) => day > stay.fromDay && day <= (stay.toDay ?? Number.POSITIVE_INFINITY))
      .map((opening) => ({
        ...place(stay),
        frame,
        day: opening.day,
        unitHours: unitHoursAt(stay, opening.day),
        opening,
      })),
  );
  return [delivery, ...overhauls];
}

function place({ unit, engine, bank }: Stay) {
  return { unit, engine, bank };
}
