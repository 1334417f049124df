import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import studentQuantile from '@stdlib/stats-base-dists-t-quantile';
import { gaussLegendre } from '../charts/gaussLegendre';
import { findRoot } from '../wear/findRoot';
import { anomChance, FARTHEST } from './anomChance';

/** Places at which the chance is computed; polynomials between them differ from it by under 1e-6. */
const NODES = 64;
const SPREAD_POINTS = 64;
const SPREAD_REACH = 9;
const HIGHEST = 1000;

/**
 * Critical value h of the analysis of means: with the given confidence no level's mean lies further from the grand
 * mean than h x s x sqrt((N - n) / (N n)), where levels do not differ.
 *
 * The multivariate Student t chance is that for known standard deviation, see anomChance, averaged over the
 * estimate's own distribution; sizes may differ. For two levels it is Student's t.
 *
 * @param sizes number of values a level, two levels or more
 * @param degreesOfFreedom of the standard deviation; infinite where it is known
 * Throws if a size or the degrees of freedom are under 1, or the confidence not between 0 and 1.
 * Nelson 1982, Journal of Quality Technology 14, 21.
 */
export function anomCritical(sizes: readonly number[], degreesOfFreedom: number, confidence: number): number {
  if (sizes.length < 2 || !sizes.every((size) => size >= 1) || !(degreesOfFreedom >= 1)) {
    throw new Error(
      `anomCritical requires 2 levels with values and 1 degree of freedom, got ${sizes.length} and ${degreesOfFreedom}`,
    );
  }
  if (!(confidence > 0 && confidence < 1)) {
    throw new Error(`anomCritical requires a confidence between 0 and 1, got ${confidence}`);
  }
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const shares = sizes.map((size) => size / total);
  const known = !Number.isFinite(degreesOfFreedom);
  if (sizes.length === 2) {
    const below = 0.5 + confidence / 2;
    return known ? normalQuantile(below, 0, 1) : studentQuantile(below, degreesOfFreedom);
  }
  if (known) return findRoot((h) => anomChance(shares, h) - confidence, 0, FARTHEST, 1e-10);
  const chance = chebyshev((h) => anomChance(shares, h));
  const { points, weights } = spreadRule(degreesOfFreedom);
  const averaged = (h: number) =>
    points.reduce((sum, spread, k) => sum + (weights[k] as number) * chance(h * spread), 0);
  return findRoot((h) => averaged(h) - confidence, 0, HIGHEST, 1e-9);
}

/** The estimate / the true standard deviation: density proportional to u^(nu - 1) exp(-nu u squared / 2). */
function spreadRule(degreesOfFreedom: number) {
  const reach = SPREAD_REACH / Math.sqrt(2 * degreesOfFreedom);
  const { points, weights } = gaussLegendre(SPREAD_POINTS, Math.max(0, 1 - reach), 1 + reach);
  const densities = points.map(
    (u, k) =>
      (weights[k] as number) *
      Math.exp((degreesOfFreedom - 1) * Math.log(u) - (degreesOfFreedom / 2) * (u * u - 1)),
  );
  const sum = densities.reduce((total, value) => total + value, 0);
  return { points, weights: densities.map((value) => value / sum) };
}

/** Polynomial through a function's values at Chebyshev's points from 0 to FARTHEST; 1 beyond. */
function chebyshev(valueAt: (h: number) => number): (h: number) => number {
  const angles = Array.from({ length: NODES }, (_, k) => (Math.PI * k) / (NODES - 1));
  const at = angles.map((angle) => (FARTHEST / 2) * (1 - Math.cos(angle)));
  const values = at.map(valueAt);
  const sign = (k: number) => (k % 2 === 0 ? 1 : -1) * (k === 0 || k === NODES - 1 ? 0.5 : 1);
  return (h) => {
    if (h >= FARTHEST) return 1;
    let [above, below] = [0, 0];
    for (let k = 0; k < NODES; k++) {
      const distance = h - (at[k] as number);
      if (distance === 0) return values[k] as number;
      above += (sign(k) / distance) * (values[k] as number);
      below += sign(k) / distance;
    }
    return above / below;
  };
}
