import type { ChartSides } from '../../stats/charts/ChartKind';
import type { EwmaPoint } from '../../stats/charts/ewmaChart';
import type { IndividualsChart } from '../../stats/charts/individualsChart';
import type { ProcessPerformance } from '../../stats/charts/processPerformance';
import type { RunRule } from '../../stats/charts/runRules';

/** Kinds of chart of forecast residuals. */
export type ChartName = 'individuals' | 'ewma' | 'cusum';

export type { RunRule };

/** Choices of the Drift page. */
export interface DriftSettings {
  /** False signals a year that the whole fleet may raise. */
  readonly budget_per_year: number;
  readonly charts: readonly ChartName[];
  /** Run rules in force: their false signals come on top of the budget. */
  readonly rules: readonly RunRule[];
}

/** One reading on a chart. */
export interface ChartedReading {
  readonly overhaul: string;
  readonly date: string;
  readonly stage: 'found' | 'left';
  readonly unitHours: number;
  readonly runHours: number;
  readonly workshop: string | null;
  readonly value_mm: number;
  /** Level foretold for it, mm. */
  readonly foretold_mm: number | null;
  /** Forecast residual, standard normal if nothing has changed; null where nothing could be foretold. */
  readonly z: number | null;
}

/** One unit's series with its forecast residuals, in the order in which the readings were taken. */
export interface ChartedSeries {
  readonly unit: string;
  readonly group: string;
  readonly series: string;
  readonly sides: ChartSides;
  readonly readings: readonly ChartedReading[];
}

/** A threshold in force, in units of its statistic, and what it costs. */
export interface ThresholdInForce {
  readonly chart: ChartName;
  readonly sides: ChartSides;
  readonly threshold: number;
  readonly expected_per_year: number;
  /** The budget asks for more or fewer signals than any threshold gives. */
  readonly met: boolean;
}

/** A chart's rule was broken. */
export interface DriftSignal {
  /** Stable: what an acknowledgement is about. */
  readonly id: string;
  readonly unit: string;
  readonly group: string;
  readonly series: string;
  readonly chart: ChartName | 'run rule';
  readonly rule: string;
  readonly overhaul: string;
  readonly date: string;
  readonly stage: 'found' | 'left';
  readonly side: 'upper' | 'lower';
  readonly statistic: number;
  readonly threshold: number;
  /** Date of the first reading after the shift began, as the CUSUM estimates it; of the reading itself elsewhere. */
  readonly sinceDate: string;
}

/** Whether a rise is gone after reassembly. */
export type Pattern = 'persists' | 'vanishes' | 'cannot be told';

/** What the signals of one unit's series say together. */
export interface DriftFinding {
  readonly unit: string;
  readonly group: string;
  readonly series: string;
  /** In order of date. */
  readonly signals: readonly DriftSignal[];
  /** The signal that chance brings least often. */
  readonly strongest: DriftSignal;
  /** Signals as strong as the strongest that chance brings a year in the whole fleet, by charts like its own. */
  readonly byChance_per_year: number;
  /** Side of the strongest signal. */
  readonly side: 'upper' | 'lower';
  /** Earliest start of a shift among the signals of that side. */
  readonly sinceDate: string;
  /** Date of the latest signal of either side. */
  readonly lastDate: string;
  /** False signals expected from all charts of this series over its whole history. */
  readonly expectedFalse: number;
  readonly pattern: Pattern;
}

/** A group's series of which nothing can be foretold. */
export interface UnchartedSeries {
  readonly group: string;
  readonly series: string;
  readonly reason: string;
}

/** What the Drift page shows first. */
export interface DriftResult {
  readonly asOf: string;
  readonly source: 'demo' | 'own';
  readonly settings: DriftSettings;
  /** Years from the first charted reading to the last. */
  readonly years: number;
  readonly readings: number;
  readonly thresholds: readonly ThresholdInForce[];
  readonly ruleCosts: readonly { readonly rule: RunRule; readonly expected_per_year: number }[];
  readonly findings: readonly DriftFinding[];
  readonly uncharted: readonly UnchartedSeries[];
}

/** The charts of one unit's series; a chart that is not in force is null. */
export interface UnitCharts {
  readonly series: ChartedSeries;
  /** Readings with a z, in order: what the positions of the charts count. */
  readonly known: readonly ChartedReading[];
  /** Threshold of the individuals. */
  readonly individuals: number | null;
  readonly ewma: readonly EwmaPoint[] | null;
  readonly cusum: {
    readonly threshold: number;
    readonly upper: readonly number[];
    readonly lower: readonly number[] | null;
  } | null;
  readonly movingRange: {
    readonly stage: ChartedReading['stage'];
    readonly readings: readonly ChartedReading[];
    /** Null where the baseline has under 2 readings or does not vary. */
    readonly chart: IndividualsChart | null;
  };
}

/** One frame's readings as left at a workshop against its assembly range. */
export interface WorkshopFrame {
  readonly frame: string;
  readonly readings: number;
  readonly lower_mm: number | null;
  readonly upper_mm: number | null;
  readonly performance: ProcessPerformance | null;
  readonly reason: string | null;
}

/** What one workshop leaves behind in one series. */
export interface Workshop {
  readonly workshop: string;
  readonly readings: readonly (ChartedReading & { readonly unit: string; readonly frame: string })[];
  readonly frames: readonly WorkshopFrame[];
}
