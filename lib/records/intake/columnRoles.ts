import type { ColumnRole } from './types';

/** What a meaning may say besides its role. */
export type MeaningPart = 'characteristic' | 'stage' | 'clock' | 'uom';

const parts: Readonly<Record<ColumnRole, readonly MeaningPart[]>> = {
  unused: [],
  unit: [],
  date: [],
  unit_hours: [],
  engine_hours: [],
  reading: ['characteristic', 'stage', 'clock', 'uom'],
  overhaul: [],
  frame: [],
  site: [],
  engine: [],
  bank: [],
  workshop: [],
  kind: [],
  fitted: [],
  remarks: [],
  revision: [],
  characteristic: [],
  stage: [],
  clock: [],
  value: ['characteristic', 'stage', 'clock', 'uom'],
  uom: [],
  lower: ['characteristic', 'stage', 'clock', 'uom'],
  upper: ['characteristic', 'stage', 'clock', 'uom'],
};

/** Every role, those that a sheet needs most first. */
export const columnRoles = Object.keys(parts) as readonly ColumnRole[];

/** The role of that name, or null. */
export function columnRole(name: string): ColumnRole | null {
  return columnRoles.find((role) => role === name) ?? null;
}

/** What a meaning of the role says besides it. */
export function partsOf(role: ColumnRole): readonly MeaningPart[] {
  return parts[role];
}

/** Key under which only one column of a sheet can stand, or null where several may share the role. */
export function placeOf(meaning: {
  readonly role: ColumnRole;
  readonly characteristic: string | null;
  readonly stage: string | null;
  readonly clock: string | null;
}): string | null {
  const { role, characteristic, stage, clock } = meaning;
  if (role === 'unused' || role === 'remarks' || role === 'reading') return null;
  if (role === 'lower' || role === 'upper') return [role, characteristic, stage, clock].join(' ');
  return role === 'value' ? [role, stage, clock].join(' ') : role;
}
