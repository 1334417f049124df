/** One reading of a series, as the wear model takes it: x run hours / 10,000, y mm. */
export interface WearReading {
  readonly unit: string;
  readonly run: string;
  readonly x: number;
  readonly y: number;
  /** Share of the noise precision that the reading keeps: 1 for a plain reading, see intervalWeight. */
  readonly weight?: number;
}

/** One run already summed, as SQL returns it; sums are weighted and centred on the run's own weighted means. */
export interface WearRow {
  readonly unit: string;
  readonly run: string;
  /** Readings in the run. */
  readonly count: number;
  /** Sum of weights: equal to count without interval readings. */
  readonly n: number;
  readonly mean_x: number;
  readonly mean_y: number;
  readonly sxx_c: number;
  readonly sxy_c: number;
  readonly syy_c: number;
  readonly min_x: number;
  readonly max_x: number;
  /** Sum of the logarithms of the weights: 0 without interval readings. */
  readonly log_weight_sum?: number;
}

/**
 * Sufficient statistics of one sister group and series: runs in flat arrays, grouped by unit.
 *
 * x is run hours / 10,000 counted from the start of the run, where the start values live, so x needs no
 * centre; y is mm above yCentre. Run r belongs to unit i where firstRun[i] <= r < firstRun[i + 1].
 */
export interface WearStatistics {
  readonly unitNames: readonly string[];
  readonly runNames: readonly string[];
  /** First run of every unit, and the number of runs at the end: length units + 1. */
  readonly firstRun: Int32Array;
  /** Readings a run. */
  readonly count: Int32Array;
  /** Sum of weights a run. */
  readonly n: Float64Array;
  readonly sx: Float64Array;
  readonly sxx: Float64Array;
  readonly sy: Float64Array;
  readonly sxy: Float64Array;
  readonly syy: Float64Array;
  /** Sums of squares and products about the run's own means, kept because differences of sums lose digits. */
  readonly sxxCentred: Float64Array;
  readonly sxyCentred: Float64Array;
  readonly syyCentred: Float64Array;
  readonly minX: Float64Array;
  readonly maxX: Float64Array;
  readonly yCentre: number;
  readonly readings: number;
  readonly logWeightSum: number;
}

/** The four ratios SD / noise SD, in this order wherever four numbers stand for them. */
export type RatioName = 'startRun' | 'slopeRun' | 'startUnit' | 'slopeUnit';

/** Names of the standard deviations as a fit record reports them. */
export type SdName = 'sdNoise' | 'sdStartRun' | 'sdSlopeRun' | 'sdStartUnit' | 'sdSlopeUnit';

/** Restricted maximum likelihood fit of the wear model, with its own convergence, boundary and data counts. */
export interface WearFit {
  readonly intercept_mm: number;
  readonly slope_mm_per_10kh: number;
  readonly interceptSe_mm: number;
  readonly slopeSe_mm_per_10kh: number;
  readonly sdNoise_mm: number;
  readonly sdStartRun_mm: number;
  readonly sdSlopeRun_mm_per_10kh: number;
  readonly sdStartUnit_mm: number;
  readonly sdSlopeUnit_mm_per_10kh: number;
  /** SD / noise SD, slopes per 10,000 h. */
  readonly ratios: Readonly<Record<RatioName, number>>;
  /** Minus twice the restricted log likelihood, constants as in lme4's REMLcrit. */
  readonly remlCriterion: number;
  /** Standard deviations at zero. */
  readonly boundary: readonly SdName[];
  readonly converged: boolean;
  readonly evaluations: number;
  readonly units: number;
  readonly runs: number;
  readonly readings: number;
}

/** Student t distribution function for fixed degrees of freedom, tabulated; see studentTable. */
export interface StudentTable {
  readonly degreesOfFreedom: number;
  /** Last tabulated argument; beyond it the tail is below 1e-13 or, if not negligible, computed. */
  readonly last: number;
  readonly negligibleBeyond: boolean;
  readonly stepsPerUnit: number;
  /** Four cubic coefficients a step. */
  readonly coefficients: Float64Array;
}

/** Integrated posterior: nodes over the four ratios, at each of which everything is Student t; weights sum to 1. */
export interface WearPosterior {
  readonly weight: Float64Array;
  readonly startRun: Float64Array;
  readonly slopeRun: Float64Array;
  readonly startUnit: Float64Array;
  readonly slopeUnit: Float64Array;
  /** Fixed effects at each node: intercept above yCentre and slope. */
  readonly beta0: Float64Array;
  readonly beta1: Float64Array;
  /** Inverse of the information matrix at each node, in units of s2. */
  readonly inverse00: Float64Array;
  readonly inverse01: Float64Array;
  readonly inverse11: Float64Array;
  /** Noise variance RSS / (N - 4) at each node, mm squared. */
  readonly s2: Float64Array;
  /** Nodes that share the two run ratios share this index; nodes are sorted by it. */
  readonly runPair: Int32Array;
  readonly runPairs: number;
  readonly degreesOfFreedom: number;
  readonly table: StudentTable;
  readonly yCentre: number;
  readonly placement: 'tangent' | 'adaptive';
  /** Nodes computed, before those of negligible weight were dropped. */
  readonly nodesComputed: number;
  /** Largest share of weight on an outermost node that is not at a natural end of its range. */
  readonly edgeShare: number;
}

/** Mixture of Student t distributions of (start, slope): level at x is start + slope x. */
export interface LineMixture {
  readonly weight: Float64Array;
  /** Component means: start in mm, slope in mm per 10,000 h. */
  readonly start: Float64Array;
  readonly slope: Float64Array;
  /** Component squared t scales: covariance of (start, slope) times (nu - 2) / nu. */
  readonly startStart: Float64Array;
  readonly startSlope: Float64Array;
  readonly slopeSlope: Float64Array;
  /** Noise variance of one reading, mm squared. */
  readonly s2: Float64Array;
  readonly table: StudentTable;
}

/** Which side of a series the limit lies on. */
export type LimitSide = 'upper' | 'lower';

/** Mean and standard deviation. */
export interface MeanSd {
  readonly mean: number;
  readonly sd: number;
}
