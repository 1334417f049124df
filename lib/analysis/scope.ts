import type { UnitRow } from './types';

/** Which units are looked at; an empty text, and an empty list, mean all. */
export interface Scope {
  readonly site: string;
  readonly frame: string;
  readonly engine: string;
  /** Workshop of the last overhaul. */
  readonly workshop: string;
  readonly units: readonly string[];
}

/** The whole fleet. */
export const wholeFleet: Scope = { site: '', frame: '', engine: '', workshop: '', units: [] };

/** Whether a scope leaves anything out. */
export function isWholeFleet({ site, frame, engine, workshop, units }: Scope): boolean {
  return [site, frame, engine, workshop].every((value) => value === '') && units.length === 0;
}

/** A test of whether a unit is in a scope. */
export function scopeTest({ site, frame, engine, workshop, units }: Scope): (unit: UnitRow) => boolean {
  const names = new Set(units);
  return (unit) =>
    (site === '' || unit.site === site) &&
    (frame === '' || unit.frame === frame) &&
    (engine === '' || unit.engine === engine) &&
    (workshop === '' || unit.lastWorkshop === workshop) &&
    (names.size === 0 || names.has(unit.unit));
}
