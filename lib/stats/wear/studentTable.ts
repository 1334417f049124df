import cdf from '@stdlib/stats-base-dists-t-cdf';
import quantile from '@stdlib/stats-base-dists-t-quantile';
import { findRoot } from './findRoot';
import type { StudentTable } from './types';

const STEPS_PER_UNIT = 64;
const FARTHEST = 32;
const NEGLIGIBLE_TAIL = 1e-13;
/** Tables that are kept: groups of one size ask for the same ones, and each takes longer to make than hundreds of forecasts from it. */
const MOST_KEPT = 128;
const kept = new Map<number, StudentTable>();

/**
 * Tabulates Student's t distribution function for fixed degrees of freedom at 64 points a unit, with cubics
 * between them; error below 1e-9.
 *
 * The tail beyond the last point comes from the distribution function; the others follow by Simpson's rule on the
 * density, inwards. Throws if the degrees of freedom are not a positive finite number.
 */
export function studentTable(degreesOfFreedom: number): StudentTable {
  if (!(degreesOfFreedom > 0) || !Number.isFinite(degreesOfFreedom)) {
    throw new Error(`studentTable requires positive degrees of freedom, got ${degreesOfFreedom}`);
  }
  const known = kept.get(degreesOfFreedom);
  if (known !== undefined) return known;
  const made = madeTable(degreesOfFreedom);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(degreesOfFreedom, made);
  return made;
}

function madeTable(degreesOfFreedom: number): StudentTable {
  const negligible = Math.ceil(-quantile(NEGLIGIBLE_TAIL, degreesOfFreedom));
  const last = Math.min(FARTHEST, negligible);
  const density = studentDensity(degreesOfFreedom);
  const coefficients = new Float64Array(4 * last * STEPS_PER_UNIT);
  let tail = cdf(-last, degreesOfFreedom);
  let fall = density(last) / STEPS_PER_UNIT;
  for (let step = last * STEPS_PER_UNIT - 1; step >= 0; step--) {
    const nearFall = density(step / STEPS_PER_UNIT) / STEPS_PER_UNIT;
    const inside = (nearFall + 4 * (density((step + 0.5) / STEPS_PER_UNIT) / STEPS_PER_UNIT) + fall) / 6;
    coefficients[4 * step] = tail + inside;
    coefficients[4 * step + 1] = -nearFall;
    coefficients[4 * step + 2] = -3 * inside + 2 * nearFall + fall;
    coefficients[4 * step + 3] = 2 * inside - nearFall - fall;
    tail += inside;
    fall = nearFall;
  }
  const negligibleBeyond = negligible <= FARTHEST;
  return { degreesOfFreedom, last, negligibleBeyond, stepsPerUnit: STEPS_PER_UNIT, coefficients };
}

/** Probability that Student's t lies above |z|, from the table; at most 1/2. */
export function studentTail(table: StudentTable, z: number): number {
  const distance = Math.abs(z);
  if (!(distance < table.last)) return table.negligibleBeyond ? 0 : cdf(-distance, table.degreesOfFreedom);
  const position = distance * table.stepsPerUnit;
  const step = Math.floor(position);
  const t = position - step;
  const { coefficients } = table;
  const p = 4 * step;
  const bend = (coefficients[p + 2] as number) + t * (coefficients[p + 3] as number);
  return (coefficients[p] as number) + t * ((coefficients[p + 1] as number) + t * bend);
}

/** Probability that Student's t lies below z, from the table. */
export function studentCdf(table: StudentTable, z: number): number {
  const tail = studentTail(table, z);
  return z < 0 ? tail : 1 - tail;
}

/** Value below which Student's t lies with the given probability, 0 < probability < 1. */
export function studentQuantile(table: StudentTable, probability: number): number {
  const tail = Math.min(probability, 1 - probability);
  if (tail <= studentTail(table, table.last * (1 - 1e-12)))
    return quantile(probability, table.degreesOfFreedom);
  return findRoot((z) => studentCdf(table, z) - probability, -table.last, table.last, 1e-10);
}

/** Density of Student's t: constant x (1 + z squared / nu)^-(nu + 1)/2. */
function studentDensity(degreesOfFreedom: number): (z: number) => number {
  const half = (degreesOfFreedom + 1) / 2;
  const constant = Math.exp(logGammaRatio(degreesOfFreedom / 2)) / Math.sqrt(Math.PI * degreesOfFreedom);
  return (z) => constant * Math.exp(-half * Math.log1p((z * z) / degreesOfFreedom));
}

/** log Gamma(h + 1/2) - log Gamma(h), by recurrence up to h >= 30 and the asymptotic series there. */
function logGammaRatio(h: number): number {
  if (h < 30) return logGammaRatio(h + 1) - Math.log((h + 0.5) / h);
  const inverse = 1 / h;
  const square = inverse * inverse;
  return (
    0.5 * Math.log(h) - inverse * (1 / 8 - square * (1 / 192 - square * (1 / 640 - (17 * square) / 14336)))
  );
}
