import type { BandPoint } from '../analysis/types';

/**
 * A band at some hours on the unit, straight between its points as it is drawn; mm.
 *
 * @param band in the order of its hours
 * @returns null before its first and after its last point
 */
export function bandAt(
  band: readonly BandPoint[],
  unitHours: number,
): Pick<BandPoint, 'lower_mm' | 'median_mm' | 'upper_mm'> | null {
  const after = band.findIndex((point) => point.unitHours >= unitHours);
  const next = band[after];
  if (next === undefined) return null;
  if (next.unitHours === unitHours) return next;
  const last = band[after - 1];
  if (last === undefined) return null;
  const share = (unitHours - last.unitHours) / (next.unitHours - last.unitHours);
  const between = (from: number, to: number) => from + share * (to - from);
  return {
    lower_mm: between(last.lower_mm, next.lower_mm),
    median_mm: between(last.median_mm, next.median_mm),
    upper_mm: between(last.upper_mm, next.upper_mm),
  };
}
