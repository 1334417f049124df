import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { gaussLegendre } from './gaussLegendre';

/** Constants of control charts for groups of n normal values with standard deviation 1. */
export interface ControlConstants {
  /** Mean of the range. */
  readonly d2: number;
  /** Standard deviation of the range. */
  readonly d3: number;
  /** Mean of the standard deviation with divisor n - 1. */
  readonly c4: number;
}

/** Range of n standard normals and each of them lie inside these but for less than 1e-15. */
const WIDEST = 14;
const FARTHEST = 9;
const STEP = 0.05;
const POINTS = 64;

/**
 * Constants d2, d3 and c4 for groups of n, by integration.
 *
 * With F(r) = n integral of phi(x) (Phi(x + r) - Phi(x))^(n - 1) dx the distribution function of the range,
 * d2 = integral of 1 - F and d2 squared + d3 squared = 2 integral of r (1 - F). c4 follows from c4(2) =
 * sqrt(2 / pi) by c4(n) c4(n + 1) = sqrt((n - 1) / n). Throws unless n is a whole number from 2 to 100.
 */
export function controlConstants(n: number): ControlConstants {
  if (!Number.isInteger(n) || n < 2 || n > 100) {
    throw new Error(`controlConstants requires a whole number from 2 to 100, got ${n}`);
  }
  const { points, weights } = gaussLegendre(POINTS, 0, WIDEST);
  let [mean, square] = [0, 0];
  points.forEach((range, k) => {
    const above = (weights[k] as number) * (1 - rangeCdf(n, range));
    mean += above;
    square += 2 * range * above;
  });
  let c4 = Math.sqrt(2 / Math.PI);
  for (let m = 2; m < n; m++) c4 = Math.sqrt((m - 1) / m) / c4;
  return { d2: mean, d3: Math.sqrt(square - mean * mean), c4 };
}

/** Trapezium rule over the whole line, which is exact to rounding for so smooth a function. */
function rangeCdf(n: number, range: number): number {
  let sum = 0;
  for (let x = -FARTHEST; x <= FARTHEST; x += STEP) {
    sum += Math.exp(-0.5 * x * x) * (normalCdf(x + range, 0, 1) - normalCdf(x, 0, 1)) ** (n - 1);
  }
  return (n * STEP * sum) / Math.sqrt(2 * Math.PI);
}
