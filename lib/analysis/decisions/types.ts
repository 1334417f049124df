import type { LimitKind } from '../types';

/** What to do about a series or a unit at a planned overhaul, the least first. */
export const actions = [
  'run on',
  'measure again',
  'correct at assembly',
  'fit new part',
  'bring forward',
] as const;
export type Action = (typeof actions)[number];

/** Why a reading is asked for: what the level in the present run is known from. */
export type Doubt = 'no reading in the run' | 'one reading in the run' | 'wide interval';

/** One limit at one planned overhaul. Chances are null where they cannot be told; reason says why. */
export interface SeriesDecision {
  readonly series: string;
  readonly limitKind: LimitKind;
  readonly limit_mm: number;
  readonly action: Action | null;
  /** The limit is passed before this overhaul. */
  readonly chanceBefore: number | null;
  /** The limit is passed before the following overhaul if nothing is fitted; what assembly resets is reset. */
  readonly chanceRunningOn: number | null;
  /** The same with the series renewed at this overhaul. */
  readonly chanceRenewed: number | null;
  /** Last day on which the chance of being past is still within the accepted risk; null unless it comes before the overhaul. */
  readonly bringForwardTo: string | null;
  readonly doubt: Doubt | null;
  readonly reason: string | null;
}

/** A part that an overhaul needs. */
export interface PartWanted {
  readonly part: string;
  readonly pieces: number;
  readonly because: 'limit' | 'rated life' | 'every overhaul';
  /** Series that call for it. */
  readonly series: readonly string[];
}

/** What to do with a unit at one of its planned overhauls, supposing that the advice for the earlier ones is followed. */
export interface Decision {
  readonly unit: string;
  readonly group: string;
  readonly engine: string | null;
  readonly bank: string | null;
  /** 1 for the next overhaul, 2 for the one after it. */
  readonly overhaul: number;
  readonly date: string | null;
  readonly unitHours: number | null;
  readonly followingDate: string | null;
  /** The weightiest of the series' actions; null if nothing can be said. */
  readonly action: Action | null;
  /** Day for 'bring forward': the earliest that a limit or the rated life asks for. */
  readonly bringForwardTo: string | null;
  /** Some limit is passed before this overhaul; before the following one if nothing is fitted. */
  readonly chanceBefore: number | null;
  readonly chanceRunningOn: number | null;
  /** The limit that drives the action, or the rated life; null where it runs on and no limit's chance reaches 1 %. */
  readonly drivenBy: string | null;
  readonly series: readonly SeriesDecision[];
  readonly parts: readonly PartWanted[];
  /** Last day of the rated life if it ends before the following overhaul, or if no overhaul is planned; today if it is past. */
  readonly ratedLifeEnds: string | null;
  readonly reason: string | null;
}

/** Choices of the decisions. */
export interface DecisionSettings {
  /** Chance, for each limit, of passing it before the following overhaul above which a part is replaced. */
  readonly acceptedRisk: number;
  readonly horizonMonths: number;
}
