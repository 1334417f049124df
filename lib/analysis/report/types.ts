import type { Decision } from '../decisions/types';
import type { OrderRow, Spares, SparesSettings } from '../demand/types';
import type { DriftFinding, DriftResult, DriftSettings } from '../drift/types';
import type { Scope } from '../scope';
import type { FleetResult, LimitKind } from '../types';

/** What a planning paper is asked for. */
export interface PaperSettings {
  readonly scope: Scope;
  /** YYYY-MM-DD: overhauls and readings of later days are left out. */
  readonly asOf: string;
  /** Earlier day, YYYY-MM-DD, that the paper is compared with; null for none. */
  readonly since: string | null;
  readonly spares: SparesSettings;
  readonly drift: DriftSettings;
}

/** What held rows and cells do to the verdict on their unit. */
export type HeldEffect =
  | 'unit not known'
  | 'no forecast'
  | 'chance is a lower bound'
  | 'forecast without them';

/** Held rows and cells of one unit. */
export interface HeldRows {
  /** Null where no unit can be told. */
  readonly unit: string | null;
  readonly held: number;
  /** How many different reasons there are, and the one met most often. */
  readonly reasons: number;
  readonly reason: string;
  readonly effect: HeldEffect;
}

/** Demand of the units of a scope alone up to the end of the horizon, pieces. */
export interface ScopeDemand {
  readonly part: string;
  readonly mean: number;
  readonly p90: number;
}

/** What goes on the paper, as of a day. */
export interface Paper {
  readonly scope: Scope;
  /** Units, margins and files; units and margins of the scope only, no problems. */
  readonly fleet: FleetResult;
  /** Units of the whole fleet. */
  readonly unitsInFleet: number;
  /** First day with an overhaul on record. */
  readonly firstDate: string | null;
  /** Advice for the next overhaul of every unit of the scope. */
  readonly decisions: readonly Decision[];
  /** Charts of the whole fleet, findings of the scope. */
  readonly drift: DriftResult;
  /** Stock and orders of the whole fleet; of its orders those of parts that frames of the scope take. */
  readonly spares: Spares;
  /** Null for the whole fleet. */
  readonly ownDemand: readonly ScopeDemand[] | null;
  /** Those of the scope, and those of no known unit. */
  readonly held: readonly HeldRows[];
}

/** When the first limit of a unit is met; a null date with beyond unset is not known. */
export interface MetPoint {
  readonly date: string | null;
  /** Not within 100,000 h. */
  readonly beyond: boolean;
}

/** What a paper says of one unit. */
export interface UnitOnPaper {
  readonly unit: string;
  readonly cannotWait: boolean;
  readonly pastNow: boolean;
  readonly chanceAtNextOverhaul: number | null;
  readonly nextOverhaulDate: string | null;
  readonly lastOverhaulDate: string | null;
  /** The limit that is met soonest; null without a limit that has a forecast. */
  readonly met: {
    readonly series: string;
    readonly limitKind: LimitKind | null;
    readonly early: MetPoint;
    readonly median: MetPoint;
    readonly late: MetPoint;
  } | null;
}

/** What two papers are compared by. */
export interface PaperSummary {
  readonly asOf: string;
  readonly units: readonly UnitOnPaper[];
  readonly findings: readonly DriftFinding[];
  /** Orders to place before the stock is looked at next. */
  readonly ordersDue: readonly OrderRow[];
}

/** Whether something is on the later paper only, or on the earlier one only. */
export type Way = 'new' | 'gone';

interface Between<T> {
  readonly before: T | null;
  readonly after: T | null;
}

/** One difference between two papers. */
export type PaperChange =
  | ({ readonly about: 'cannot wait'; readonly way: Way; readonly unit: string } & Between<UnitOnPaper>)
  | {
      readonly about: 'date';
      readonly way: 'moved';
      readonly unit: string;
      readonly before: UnitOnPaper;
      readonly after: UnitOnPaper;
    }
  | ({
      readonly about: 'signal';
      readonly way: Way;
      readonly unit: string;
      readonly series: string;
    } & Between<DriftFinding>)
  | ({ readonly about: 'order'; readonly way: Way; readonly part: string } & Between<OrderRow>);

/** The paper and, if asked for, what changed since an earlier day. */
export interface Report {
  readonly paper: Paper;
  readonly compared: {
    readonly since: string;
    readonly changes: readonly PaperChange[];
  } | null;
}
