import type { ClockForecast } from '../../stats/benchCheck/clockForecast';
import type { Conformity, Range } from '../../stats/benchCheck/conformity';
import type { LineMixture } from '../../stats/wear/types';
import type { UnitRow } from '../types';
import type { Clock, Stage } from './benchEntry';
import type { Gauge } from './gaugeOf';

export type { Conformity } from '../../stats/benchCheck/conformity';
export type { BenchEntry, Clock, Stage } from './benchEntry';

/** Where a line stands at run hours / 10,000. */
export interface LineAt {
  readonly line: LineMixture;
  readonly x: number;
}

/** What is foretold of one stage of a characteristic; null where nothing can be, reason says why. */
export interface StageForecast {
  /** Of the reading, or of the mean of four clock readings. */
  readonly level: LineAt | null;
  /** How the positions lie about their mean; null for a single reading and where too little is known. */
  readonly clock: ClockForecast | null;
  readonly reason: string | null;
}

/** What the readings of one characteristic are checked against. */
export interface CheckBasis {
  readonly characteristic: string;
  readonly shape: 'single' | 'four_clock';
  readonly neverNegative: boolean;
  readonly forecasts: Readonly<Record<Stage, StageForecast>>;
  /** Nothing resets the series between as found and as left. */
  readonly sameState: boolean;
  /** Standard deviation of one reading, mm; null if it is not known. */
  readonly gaugeSd_mm: number | null;
  /** Usual size of such readings, mm; null if it is not known. */
  readonly usual_mm: number | null;
}

/** 10, 50 and 90 % of a reading, mm. */
export interface Expected {
  readonly lower_mm: number;
  readonly median_mm: number;
  readonly upper_mm: number;
}

/** Why a reading is questioned. Questions never block. */
export type Doubt =
  | { readonly kind: 'negative' }
  /** A usual slip of scale brings it to what is expected; suggestion is what would have been typed. */
  | { readonly kind: 'scale'; readonly words: string; readonly suggestion: string }
  /** Far from the forecast, |z| > 3; suggestion: two digits exchanged would fit. */
  | { readonly kind: 'forecast'; readonly z: number; readonly suggestion: string | null }
  /** The mean of the set is far from its forecast. */
  | { readonly kind: 'set'; readonly z: number }
  /** It does not fit the other positions. */
  | { readonly kind: 'clock position'; readonly expected_mm: number; readonly suggestion: string | null }
  | { readonly kind: 'clock positions exchanged'; readonly clocks: readonly [Clock, Clock] }
  | { readonly kind: 'stages exchanged' }
  /** As left differs from as found by more than the gauge's repeatability, with nothing fitted between. */
  | { readonly kind: 'before stripping'; readonly difference_mm: number; readonly sd_mm: number };

/** One box of the sheet: what was typed, and what is to be asked about it. */
export interface BoxCheck {
  readonly box: string;
  readonly characteristic: string;
  readonly stage: Stage;
  readonly clock: Clock | null;
  readonly lower_mm: number | null;
  readonly upper_mm: number | null;
  /** One end only was read: '>0.40'. */
  readonly isOpen: boolean;
  readonly unreadable: string | null;
  /** Of a questioned reading. */
  readonly expected: Expected | null;
  readonly doubts: readonly Doubt[];
}

/** A limit of a series in force. */
export interface SeriesLimit {
  readonly kind: 'upper' | 'lower';
  readonly limit_mm: number;
  readonly source: string | null;
}

/** What the typed readings say of a series against its limits and its assembly range. */
export interface SeriesCheck {
  readonly series: string;
  readonly stage: Stage;
  readonly value_mm: number;
  /** Positions that are still to be typed may change it. */
  readonly isWaiting: boolean;
  readonly gaugeSd_mm: number | null;
  readonly limits: readonly (SeriesLimit & { readonly conformity: Conformity })[];
  readonly assembly: (Range & { readonly conformity: Conformity }) | null;
}

/** One series on the sheet. */
export interface SheetSeries {
  readonly series: string;
  readonly limits: readonly SeriesLimit[];
  readonly assembly: Range | null;
  readonly lastLeft_mm: number | null;
  readonly expectedFound: Expected | null;
  readonly reason: string | null;
  /** Chance that the level is past a limit at these hours; null without a limit or a forecast. */
  readonly chancePast: number | null;
}

/** One box of the sheet before anything is typed. */
export interface SheetBox {
  readonly clock: Clock | null;
  readonly found: string;
  readonly left: string;
  readonly lastLeft_mm: number | null;
  readonly expectedFound: Expected | null;
}

/** One characteristic on the sheet. */
export interface SheetItem {
  readonly characteristic: string;
  readonly shape: 'single' | 'four_clock';
  readonly boxes: readonly SheetBox[];
  readonly series: readonly SheetSeries[];
  readonly lastLeftDate: string | null;
  /** Codes of the parts that start a new run; empty: every assembly does. */
  readonly resetParts: readonly string[];
  readonly gaugeSd_mm: number | null;
  readonly gaugeFrom: Gauge['from'] | null;
  readonly reason: string | null;
}

/** A part that may be fitted. */
export interface SheetPart {
  readonly part: string;
  readonly name: string | null;
  readonly pieces: number;
  /** Chance that the readings will call for it; 1 where every overhaul takes it; null if it cannot be told. */
  readonly chance: number | null;
  readonly because: 'limit' | 'rated life' | 'every overhaul';
}

/** Everything on the sheet of a unit's next overhaul. */
export interface BenchSheet {
  readonly unit: UnitRow;
  readonly asOf: string;
  readonly source: 'demo' | 'own';
  /** Day and hours that the expected ranges hold for. */
  readonly date: string | null;
  readonly unitHours: number | null;
  readonly hoursFrom: 'typed' | 'plan' | 'now' | null;
  readonly last: {
    readonly date: string;
    readonly unitHours: number | null;
    readonly workshop: string | null;
  } | null;
  readonly items: readonly SheetItem[];
  readonly parts: readonly SheetPart[];
  readonly acceptedRisk: number;
  /** Workshops on record. */
  readonly workshops: readonly string[];
}

/** What the overhaul did to one series. */
export interface SeriesAfter {
  readonly series: string;
  readonly found_mm: number | null;
  readonly left_mm: number | null;
  /** Level now less the level at the start of the run, from as found and the run's first reading; null if either is missing. */
  readonly wear_mm: number | null;
  readonly wear_mm_per_10kh: number | null;
  readonly expectedWear_mm_per_10kh: number | null;
  /** As left less as found. */
  readonly reassembly_mm: number | null;
  readonly limitKind: 'upper' | 'lower' | null;
  readonly limit_mm: number | null;
  /** Chance of being past the limit at the overhaul after this one, before and after these readings. */
  readonly chanceBefore: number | null;
  readonly chanceAfter: number | null;
  /** Unit hours at which the limit is met with a chance of one half, before and after; null: beyond. */
  readonly medianBefore_h: number | null;
  readonly medianAfter_h: number | null;
  readonly reason: string | null;
}

/** What the overhaul did. */
export interface OverhaulEffect {
  /** Unit hours of the overhaul after this one; null without an interval. */
  readonly following_h: number | null;
  /** Unit hours at which the rated life ends, which caps every forecast; null if none is given. */
  readonly ratedLife_h: number | null;
  readonly series: readonly SeriesAfter[];
}

/** What is to be said of an overhaul as typed so far. */
export interface BenchChecks {
  readonly unitHours: number | null;
  /** What is to be asked about date and hours, or what cannot be read. */
  readonly entryFaults: readonly EntryFault[];
  readonly boxes: readonly BoxCheck[];
  readonly series: readonly SeriesCheck[];
  readonly effect: OverhaulEffect;
  /** Readings that can be saved. */
  readonly readings: number;
}

/** What is wrong with date or hours; 'needed' ones keep it from being saved. */
export type EntryFault =
  | { readonly field: 'date'; readonly kind: 'needed'; readonly what: 'no date' }
  /** Reason why the hours typed cannot be read; null where none are typed. */
  | {
      readonly field: 'unitHours';
      readonly kind: 'needed';
      readonly what: 'no hours';
      readonly reason: string | null;
    }
  | { readonly field: 'readings'; readonly kind: 'needed'; readonly what: 'no reading' }
  | {
      readonly field: 'date';
      readonly kind: 'asked';
      readonly what: 'same day' | 'before the last';
      readonly date: string;
    }
  | {
      readonly field: 'unitHours';
      readonly kind: 'asked';
      readonly what: 'fewer hours' | 'far from expected';
      readonly hours: number;
    }
  | { readonly field: 'unitHours'; readonly kind: 'asked'; readonly what: 'more than the days hold' };

/** The canonical files of an overhaul. */
export interface BenchFile {
  readonly name: string;
  readonly text: string;
}
