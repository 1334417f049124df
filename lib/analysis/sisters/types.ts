import type { FunnelLimits, FunnelUnit } from '../../stats/sisters/funnel';
import type { IntervalSet, RateRatio, ShortRateRatio } from '../../stats/sisters/rateRatio';
import type { GroupBy } from '../grouping/sisterGroupOf';

/** One unit's wear against its sisters, of one series. */
export interface SisterRow {
  readonly unit: string;
  readonly group: string;
  readonly series: string;
  readonly rate: RateRatio;
  /** Smallest share of false findings, among all units of the series, at which this one is still a finding. */
  readonly q: number;
  readonly readings: number;
}

/** What sisters.csv holds of one unit and series. */
export interface SisterRatio extends Pick<SisterRow, 'unit' | 'group' | 'series'> {
  readonly rate: ShortRateRatio;
}

/** One unit's own start level against its sisters', as the funnel tells it. */
export interface StartRow {
  readonly unit: string;
  readonly group: string;
  readonly series: string;
  readonly own_mm: number;
  readonly sd_mm: number;
  /** Own less the group's, mm. */
  readonly difference_mm: number;
  /** The difference with its intervals, from the unit's own readings. */
  readonly interval_mm: IntervalSet;
  readonly outside: 'none' | '95' | '99.8';
  /** Two-sided chance of lying as far out, if units differ no more than the model's spread says. */
  readonly tailProbability: number;
  /** As for wear rates, among all start levels of the series. */
  readonly q: number;
  readonly readings: number;
}

/** Own values of a group's units against how well each is known. */
export interface SisterFunnel {
  readonly centre: number;
  readonly units: readonly FunnelUnit[];
  /** Limits at rising standard deviations of own values, for the curves. */
  readonly limits: readonly FunnelLimits[];
}

/** One sister group and series. */
export interface SisterGroup {
  readonly group: string;
  readonly series: string;
  readonly slope_mm_per_10kh: number | null;
  readonly rows: readonly SisterRow[];
  readonly startRows: readonly StartRow[];
  /** Null in groups of fewer units than show how much sisters differ among themselves; the same for starts. */
  readonly rates: SisterFunnel | null;
  readonly starts: SisterFunnel | null;
  /** Why the group cannot be compared, or null. */
  readonly reason: string | null;
}

/** What levels are of. */
export type Factor = 'site' | 'duty' | 'workshop';
/** What is compared between the levels, in standard deviations: units' own wear rates or starts, or readings as left. */
export type Compared = 'wear rate' | 'start level' | 'as left';

/** Mean of one level with the limits that all means keep at once where levels do not differ. */
export interface LevelDifference {
  readonly level: string;
  readonly count: number;
  readonly mean: number;
  readonly lower: number;
  readonly upper: number;
  readonly outside: 'none' | 'lower' | 'upper';
}

/** Comparison of the levels of a factor in one series. */
export interface FactorDifference {
  readonly factor: Factor;
  readonly compared: Compared;
  readonly series: string;
  readonly levels: readonly LevelDifference[];
  readonly reason: string | null;
}

/** Every unit against its sisters. */
export interface SistersResult {
  readonly asOf: string;
  readonly source: 'demo' | 'own';
  readonly groupBy: GroupBy;
  readonly groups: readonly SisterGroup[];
}
