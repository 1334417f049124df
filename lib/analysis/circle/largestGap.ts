import type { ClockReadings } from './types';

/**
 * Largest of four clock readings, mm; a missing one follows from the others without ovality (c12 + c6 = c3 + c9).
 *
 * Null under three positions. The largest series is this, so that its limit is held against the same number.
 */
export function largestGap({ c12, c3, c6, c9 }: ClockReadings): number | null {
  const read = [c12, c3, c6, c9].flatMap((reading) => reading ?? []);
  if (read.length < 3) return null;
  const upright = c12 === null || c6 === null ? null : c12 + c6;
  const level = c3 === null || c9 === null ? null : c3 + c9;
  const follows = (sum: number | null, beside: number | null) =>
    sum === null || beside === null ? [] : [sum - beside];
  return Math.max(
    ...read,
    ...(upright === null ? follows(level, c12 ?? c6) : []),
    ...(level === null ? follows(upright, c3 ?? c9) : []),
  );
}
