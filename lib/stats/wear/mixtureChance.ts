import { studentTail } from './studentTable';
import type { LineMixture } from './types';

/** Rounding may not make a variance zero or negative. */
export const SMALLEST_SQUARE = 1e-300;

/** A chance with its derivatives. */
export interface Chance {
  chance: number;
  /** 1 - chance, with all digits where it is small. */
  otherwise: number;
  byThreshold: number;
  byX: number;
}

/** Makes a chance to be filled. */
export function chanceToFill(): Chance {
  return { chance: 0, otherwise: 0, byThreshold: 0, byX: 0 };
}

/**
 * Fills P(value <= threshold) for direction 1, P(value >= threshold) for -1, of the mixture's level at x (noise 0) or of a reading
 * there (noise 1, and any extra variance), with its derivatives by threshold and x.
 *
 * With z = direction (threshold - mean) / scale the chance is the sum of weight x P(t <= z), dz / dx = -direction slope / scale - z
 * (start-slope + x slope-slope) / scale squared. Beyond the table a component's derivatives count as zero.
 * Every forecast spends its time here, so the table is read in place rather than through studentCdf.
 */
export function fillChance(
  into: Chance,
  mixture: LineMixture,
  x: number,
  threshold: number,
  direction: 1 | -1,
  noise: 0 | 1,
  extraVariance: number,
): void {
  const { weight, start, slope, startStart, startSlope, slopeSlope, s2, table } = mixture;
  const { coefficients, stepsPerUnit, last, negligibleBeyond } = table;
  let [chance, otherwise, byThreshold, byX] = [0, 0, 0, 0];
  for (let k = 0; k < weight.length; k++) {
    const together = startSlope[k] as number;
    const bySlope = x * (slopeSlope[k] as number);
    const variance =
      (startStart[k] as number) + x * (2 * together + bySlope) + noise * (s2[k] as number) + extraVariance;
    const square = Math.max(variance, SMALLEST_SQUARE);
    const perScale = direction / Math.sqrt(square);
    const z = perScale * (threshold - (start[k] as number) - (slope[k] as number) * x);
    const far = Math.abs(z);
    const share = weight[k] as number;
    let tail = 0;
    if (far < last) {
      const position = far * stepsPerUnit;
      const step = Math.floor(position);
      const t = position - step;
      const p = 4 * step;
      const fall = coefficients[p + 1] as number;
      const bend = coefficients[p + 2] as number;
      const twist = coefficients[p + 3] as number;
      tail = (coefficients[p] as number) + t * (fall + t * (bend + t * twist));
      const density = -share * stepsPerUnit * (fall + t * (2 * bend + 3 * t * twist));
      byThreshold += density * perScale;
      byX -= density * (perScale * (slope[k] as number) + (z * (together + bySlope)) / square);
    } else if (!negligibleBeyond) {
      tail = studentTail(table, z);
    }
    chance += share * (z < 0 ? tail : 1 - tail);
    otherwise += share * (z < 0 ? 1 - tail : tail);
  }
  into.chance = Math.min(1, chance);
  into.otherwise = Math.min(1, otherwise);
  into.byThreshold = byThreshold;
  into.byX = byX;
}
