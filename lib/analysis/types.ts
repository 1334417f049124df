import type { ImportedFile, Problem } from '../records/importReport';
import type { SheetColumns } from '../records/intake/SheetColumns';
import type { ColumnMeaning, Question } from '../records/intake/types';

export type { ColumnMeaning, ImportedFile, Problem, Question };

/** Results of the analysis, as pages, charts and batch files read them. Lengths in mm, hours in h, dates ISO (YYYY-MM-DD). */

/** Which side of a series the limit lies on. */
export type LimitKind = 'upper' | 'lower';

/** Maximum-likelihood record of one sister group and series, with its own convergence, boundary and data counts. */
export interface FitRow {
  readonly group: string;
  readonly series: string;
  readonly runs: number;
  readonly units: number;
  readonly readings: number;
  readonly intercept_mm: number | null;
  readonly slope_mm_per_10kh: number | null;
  readonly sdNoise_mm: number | null;
  readonly sdStart_mm: number | null;
  readonly sdSlopeUnit_mm_per_10kh: number | null;
  readonly sdSlopeRun_mm_per_10kh: number | null;
  readonly remlCriterion: number | null;
  readonly boundary: readonly string[];
  readonly converged: boolean;
  /** Largest run hours observed in the group: forecasts beyond it are extrapolations and say so. */
  readonly observedRunHours: number | null;
  /** Why there is no forecast for the group, or null. */
  readonly reason: string | null;
}

/** Margin of one unit, series and limit. Empty (null) where undefined; reason says why. */
export interface MarginRow {
  readonly unit: string;
  readonly group: string;
  readonly series: string;
  readonly limitKind: LimitKind | null;
  readonly limit_mm: number | null;
  readonly limitSource: string | null;
  /** Run hours now (hours on the unit carried forward to the as-of date, less the hours when the run started). */
  readonly runHours: number | null;
  readonly level_mm: number | null;
  readonly levelSd_mm: number | null;
  readonly slope_mm_per_10kh: number | null;
  readonly slopeSd_mm_per_10kh: number | null;
  readonly margin_mm: number | null;
  /** Hours from now until the chance of being past the limit is 10, 50, 90 %; null: beyond 100,000 h. */
  readonly hoursEarly: number | null;
  readonly hoursMedian: number | null;
  readonly hoursLate: number | null;
  readonly dateEarly: string | null;
  readonly dateMedian: string | null;
  readonly dateLate: string | null;
  readonly chanceNow: number | null;
  readonly nextOverhaulDate: string | null;
  readonly chanceAtNextOverhaul: number | null;
  readonly expectedFoundLower_mm: number | null;
  readonly expectedFoundMedian_mm: number | null;
  readonly expectedFoundUpper_mm: number | null;
  readonly cappedByRatedLife: boolean;
  /** True where the late point lies beyond the run hours ever observed in the group. */
  readonly extrapolated: boolean;
  readonly reason: string | null;
  /** Chance on each day of FleetResult.quarters; empty if there is no forecast by date. */
  readonly chanceByQuarter: readonly number[];
}

/** One unit as the Fleet page lists it. */
export interface UnitRow {
  readonly unit: string;
  readonly frame: string;
  readonly group: string;
  readonly site: string | null;
  readonly engine: string | null;
  readonly bank: string | null;
  readonly hoursNow: number | null;
  readonly hoursPerYear: number | null;
  /** Where hours per year and hours now come from: plan.csv, or the unit's own overhauls where it has no plan. */
  readonly hoursSource: 'plan' | 'overhauls' | null;
  readonly nextOverhaulDate: string | null;
  /** Planned overhauls inside the strip's window. */
  readonly plannedOverhauls: readonly string[];
  readonly ratedLifeDate: string | null;
  readonly lastOverhaulDate: string | null;
  /** Workshop of the last overhaul that names one. */
  readonly lastWorkshop: string | null;
  readonly overhauls: number;
}

/** How the columns of a workshop's sheet were understood, or why it was not. */
export interface UnderstoodSheet extends SheetColumns {
  readonly file: string;
}

/** Everything that the Fleet page, the Records page and the batch files need. */
export interface FleetResult {
  readonly asOf: string;
  readonly source: 'demo' | 'own';
  readonly units: readonly UnitRow[];
  readonly fits: readonly FitRow[];
  readonly margins: readonly MarginRow[];
  /** First days of the quarters after the day, for which margins state chances. */
  readonly quarters: readonly string[];
  readonly files: readonly ImportedFile[];
  readonly problems: readonly Problem[];
  /** All problems: a page lists the first thousands of them only. */
  readonly problemsFound: number;
  /** What could not be known; the cells that wait for an answer are among the problems. */
  readonly questions: readonly Question[];
  readonly sheets: readonly UnderstoodSheet[];
  readonly characteristics: readonly { readonly code: string; readonly name: string }[];
}

/** One reading of a series on the Unit page. */
export interface SeriesReading {
  readonly overhaul: string;
  readonly date: string;
  readonly stage: 'found' | 'left';
  readonly unitHours: number;
  readonly runHours: number;
  readonly run: string;
  readonly value_mm: number;
  readonly lower_mm: number | null;
  readonly upper_mm: number | null;
  readonly workshop: string | null;
  readonly sourceFile: string;
  readonly sourceRow: number;
}

/** A line or band over unit hours: the unit's own straight line, the sister-informed band, or the forecast. */
export interface BandPoint {
  readonly unitHours: number;
  readonly date: string | null;
  readonly lower_mm: number;
  readonly median_mm: number;
  readonly upper_mm: number;
}

/** Everything that the Unit page shows for one series of one unit. */
export interface UnitSeries {
  readonly series: string;
  readonly readings: readonly SeriesReading[];
  /** 80 % band of the level in the current run, from its start to the end of the forecast. */
  readonly sisterBand: readonly BandPoint[];
  /** Ordinary least squares within the current run with its 80 % prediction interval; empty below 3 readings. */
  readonly ownLine: readonly BandPoint[];
  readonly ownLineReason: string | null;
  readonly ownSlope_mm_per_10kh: number | null;
  readonly theilSenSlope_mm_per_10kh: number | null;
  readonly resets: readonly { readonly unitHours: number; readonly date: string; readonly by: string }[];
  readonly margins: readonly MarginRow[];
  readonly fit: FitRow | null;
  readonly nextOverhaulUnitHours: number | null;
}

/** One opening of the unit, for its history. */
export interface HistoryRow {
  readonly overhaul: string;
  readonly date: string;
  readonly unitHours: number | null;
  readonly hoursDerived: boolean;
  readonly engine: string | null;
  readonly bank: string | null;
  readonly site: string | null;
  readonly workshop: string | null;
  readonly kind: string | null;
  readonly fitted: string | null;
  readonly remarks: string | null;
}

/** A stay of the unit on an engine. */
export interface UnitStay {
  readonly engine: string;
  readonly site: string | null;
  readonly bank: string | null;
  readonly from: string;
  /** Null while it is there, or if the day it left is not known. */
  readonly to: string | null;
  readonly unitHoursAtFit: number | null;
  readonly engineHoursAtFit: number | null;
}

/** An event of the hour meter of an engine while the unit was on it. */
export interface MeterEvent {
  readonly date: string;
  readonly engine: string;
  readonly kind: 'meter_replaced' | 'meter_corrected';
  /** Last reading of the old meter, or hours to add to later readings; null if not given. */
  readonly hours: number | null;
}

/** How the unit hours of one overhaul follow from the engine meter. */
export interface DerivedHours {
  readonly overhaul: string;
  readonly date: string;
  readonly engine: string;
  readonly unitHours: number;
  readonly unitHoursAtFit: number;
  readonly engineHoursAtFit: number;
  readonly engineHours: number;
  /** What meter events since the unit was fitted add, in order of date, h. */
  readonly eventHours: readonly number[];
}

/** Where the unit sat and how its hours were derived from engine meters; empty lists if nothing is on record. */
export interface UnitPlaces {
  readonly stays: readonly UnitStay[];
  readonly meterEvents: readonly MeterEvent[];
  readonly derived: readonly DerivedHours[];
}

export interface UnitResult {
  readonly unit: UnitRow;
  readonly asOf: string;
  readonly source: 'demo' | 'own';
  readonly series: readonly UnitSeries[];
  readonly history: readonly HistoryRow[];
  readonly places: UnitPlaces;
}

/** Progress of long work: a sentence and a share done, 0 to 1. */
export interface Progress {
  readonly step: string;
  readonly share: number;
}
