/** Points and weights of a quadrature rule. */
export interface Quadrature {
  readonly points: Float64Array;
  readonly weights: Float64Array;
}

const NEWTON_STEPS = 100;

/**
 * Gauss and Legendre's rule from low to high: exact for polynomials up to degree 2 count - 1.
 *
 * The points are the zeros of the Legendre polynomial, by Newton's method from cos(pi (k - 1/4) / (count + 1/2)).
 * Throws unless count >= 1 and low < high. Abramowitz and Stegun 1964, Handbook of Mathematical Functions, 25.4.30.
 */
export function gaussLegendre(count: number, low: number, high: number): Quadrature {
  if (!(count >= 1) || !(low < high)) {
    throw new Error(`gaussLegendre requires a count and low < high, got ${count}, ${low} and ${high}`);
  }
  const points = new Float64Array(count);
  const weights = new Float64Array(count);
  const [middle, half] = [(low + high) / 2, (high - low) / 2];
  for (let k = 0; 2 * k < count; k++) {
    const { zero, slope } = legendreZero(count, k);
    const weight = (2 * half) / ((1 - zero * zero) * slope * slope);
    points[k] = middle - half * zero;
    points[count - 1 - k] = middle + half * zero;
    weights[k] = weight;
    weights[count - 1 - k] = weight;
  }
  return { points, weights };
}

/** The k-th zero from above of the Legendre polynomial, and the polynomial's slope there. */
function legendreZero(degree: number, k: number): { readonly zero: number; readonly slope: number } {
  let zero = Math.cos((Math.PI * (k + 0.75)) / (degree + 0.5));
  let slope = 0;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    let [value, before] = [1, 0];
    for (let j = 1; j <= degree; j++) {
      [value, before] = [((2 * j - 1) * zero * value - (j - 1) * before) / j, value];
    }
    slope = (degree * (zero * value - before)) / (zero * zero - 1);
    const change = value / slope;
    zero -= change;
    if (Math.abs(change) < 1e-15) break;
  }
  return { zero, slope };
}
