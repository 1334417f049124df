/** Forecast residuals of one overhaul: as found and as left, null where not read. */
export interface OverhaulScores {
  readonly found: number | null;
  readonly left: number | null;
}

/** What a rise does at reassembly. */
export type RisePattern = 'no rise' | 'persists' | 'vanishes' | 'cannot be told';

/** The pattern with the numbers that it follows from. */
export interface RisePatternResult {
  readonly pattern: RisePattern;
  /** Sum of as-found z / root of their number: standard normal without a rise; null without readings. */
  readonly foundScore: number | null;
  /** The same as left. */
  readonly leftScore: number | null;
  /** (mean found - mean left) / sqrt(1 / number found + 1 / number left). */
  readonly fallScore: number | null;
}

/** A rise is believed from this score on: one chance in 44 without one. */
export const BELIEVED = 2;
/** Below this an as-left score is an ordinary one. */
export const ORDINARY = 1;

/**
 * Whether a rise as found is gone as left or persists through reassembly, over one or more overhauls.
 *
 * 'no rise': found score under 2. Else 'persists': left score 2 or more. 'vanishes': left score under 1 and the fall
 * from found to left 2 or more. Otherwise, and without as-left readings, 'cannot be told'. A rise that vanishes
 * points to seating or dirt in the contact faces, one that persists to the shaft: the finding is the engineer's.
 *
 * @param overhauls z upwards, each overhaul's foretold from what was known before it, see forecastResiduals; with an
 * as-left z that knew the as-found reading a rise that persists would seem ordinary. Where the departure is downwards pass -z.
 * Throws if a z is not finite.
 */
export function risePattern(overhauls: readonly OverhaulScores[]): RisePatternResult {
  const found = overhauls.flatMap(({ found: z }) => (z === null ? [] : [z]));
  const left = overhauls.flatMap(({ left: z }) => (z === null ? [] : [z]));
  if (![...found, ...left].every(Number.isFinite)) {
    throw new Error('risePattern requires finite z or none, got others');
  }
  const [foundScore, leftScore] = [scoreOf(found), scoreOf(left)];
  const fallScore =
    foundScore === null || leftScore === null
      ? null
      : (foundScore / Math.sqrt(found.length) - leftScore / Math.sqrt(left.length)) /
        Math.sqrt(1 / found.length + 1 / left.length);
  return { pattern: patternOf(foundScore, leftScore, fallScore), foundScore, leftScore, fallScore };
}

function scoreOf(z: readonly number[]): number | null {
  return z.length === 0 ? null : z.reduce((sum, value) => sum + value, 0) / Math.sqrt(z.length);
}

function patternOf(found: number | null, left: number | null, fall: number | null): RisePattern {
  if (found === null) return 'cannot be told';
  if (found < BELIEVED) return 'no rise';
  if (left === null || fall === null) return 'cannot be told';
  if (left >= BELIEVED) return 'persists';
  return left < ORDINARY && fall >= BELIEVED ? 'vanishes' : 'cannot be told';
}
