import type { UnitNow } from '../unitNow';

/** Something that a plan or a stock lacks, and what was done without it. */
export interface PlanMessage {
  readonly about: 'unit' | 'part' | 'group';
  readonly name: string;
  readonly text: string;
}

/** A unit as its coming overhauls are planned from. */
export interface UnitPlan {
  readonly unit: UnitNow;
  readonly installed: boolean;
  readonly interval_h: number | null;
  /** Unit hours at the last overhaul on record. */
  readonly lastHours: number | null;
}

/** Changes of the plan that are tried out; the present plan is noChanges. */
export interface PlanChanges {
  /** Hours a year times this: the hours at each overhaul stay, its day moves. */
  readonly hoursPerYearFactor: number;
  /** Intervals times this, the present one included, counted from the last overhaul; never before the day asked on. */
  readonly intervalFactor: number;
  /** One unit's next overhaul on another day; its later ones follow from there. */
  readonly moved: { readonly unit: string; readonly date: string } | null;
}

/** One planned overhaul of a unit. */
export interface ComingOverhaul {
  readonly date: string;
  /** Days after the day asked on. */
  readonly day: number;
  /** Unit hours then; null if the unit's hours or hours a year are not known. */
  readonly unitHours: number | null;
  /** Unit hours and day of the overhaul after it; null if no interval is planned. */
  readonly followingHours: number | null;
  readonly followingDate: string | null;
}

/** The planned overhauls of a unit up to a day, and what the plan lacks. */
export interface UnitOverhauls {
  readonly plan: UnitPlan;
  readonly overhauls: readonly ComingOverhaul[];
  /** Why there is none, or why they are not as planned; null if all is in order. */
  readonly reason: string | null;
}
