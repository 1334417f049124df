import type { ClockPositions, ClockReadings } from '../../stats/clock/clockPositions';
import type { ClockUncertainty } from '../../stats/clock/clockUncertainty';

export type { ClockPositions, ClockReadings, ClockUncertainty };

/** One set of clock readings with what it says of the whole circle. */
export interface CircleSet {
  readonly overhaul: string;
  readonly date: string;
  readonly stage: 'found' | 'left';
  readonly readings: ClockReadings;
  /** Largest of the four positions, mm, a missing one as it follows from the others; null under three positions. */
  readonly largestGap_mm: number | null;
  /** Null under three positions. */
  readonly positions: ClockPositions | null;
  /** Null where the noise is not known, or under three positions. */
  readonly uncertainty: ClockUncertainty | null;
}

/** The clearance circles of one unit and characteristic. */
export interface ClearanceCircles {
  readonly characteristic: string;
  readonly sets: readonly CircleSet[];
  /** Standard deviation of one reading, mm; null if neither a fit nor pairs of readings give it. */
  readonly noise_mm: number | null;
  readonly noiseFrom: 'fit' | 'pairs' | null;
  /** Limits of the largest and the smallest gap, mm; null where there is none. */
  readonly largest_mm: number | null;
  readonly smallest_mm: number | null;
}
