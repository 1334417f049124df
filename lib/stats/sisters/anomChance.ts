import { gaussLegendre } from '../charts/gaussLegendre';

/** Beyond this many standard deviations no mean lies but for a chance under 1e-14. */
export const FARTHEST = 9;
/** Terms of the sum over frequencies end where what is left is below this, or here. */
const NEGLIGIBLE = 1e-10;
const MOST_TERMS = 400;
const LEAST_POINTS = 24;

/**
 * Chance that no level's mean lies further from the grand mean than h of its own standard deviations, for normal
 * values with known standard deviation: the correlations are those of means about their own grand mean, equal to
 * -1 / (k - 1) for k levels of equal size.
 *
 * With shares q = n / N, the deviations x q are independent normals with variances q given that they sum to 0.
 * So the chance is the density at 0 of the sum of these normals, each cut off at h sqrt(q (1 - q)), over the same
 * without the cuts: sqrt(2 / pi) x the integral over frequencies t > 0 of the product of their cosine integrals.
 * The sum is bounded by the cuts, so equally spaced frequencies give the integral without error.
 */
export function anomChance(shares: readonly number[], h: number): number {
  if (h >= FARTHEST) return 1;
  if (!(h > 0)) return 0;
  const sizes = [...new Set(shares)].map((share) => ({
    share,
    count: shares.filter((other) => other === share).length,
    cut: h * Math.sqrt(share * (1 - share)),
  }));
  const reach = sizes.reduce((sum, { count, cut }) => sum + count * cut, 0);
  const step = (2 * Math.PI) / (reach * (1 + 1e-9));
  const terms = termsNeeded(sizes, step, h);
  const product = new Float64Array(terms).fill(1);
  for (const { share, count, cut } of sizes) {
    const integrals = cosineIntegrals(share, cut, step, terms);
    integrals.forEach((value, k) => {
      product[k] = (product[k] as number) * value ** count;
    });
  }
  const sum = product.reduce((total, value, k) => total + (k === 0 ? value / 2 : value), 0);
  return Math.min(1, Math.max(0, Math.sqrt(2 / Math.PI) * step * sum));
}

interface SizeClass {
  readonly share: number;
  readonly count: number;
  readonly cut: number;
}

/** Far out a cosine integral is at most 2 x density at the cut / t: the product of these bounds the terms. */
function termsNeeded(sizes: readonly SizeClass[], step: number, h: number): number {
  for (let terms = 8; terms < MOST_TERMS; terms = Math.ceil(terms * 1.25)) {
    const t = terms * step;
    const bound = sizes.reduce((product, { share, count }) => {
      const edge = (2 * Math.exp(-0.5 * h * h * (1 - share))) / (Math.sqrt(2 * Math.PI * share) * t);
      return product * (Math.exp(-0.5 * share * t * t) + edge) ** count;
    }, 1);
    if (bound * t < NEGLIGIBLE) return terms;
  }
  return MOST_TERMS;
}

/** Integral of the normal density with variance 'share' x cos(t y) over |y| < cut, at t = 0, step, 2 step, ... */
function cosineIntegrals(share: number, cut: number, step: number, terms: number): Float64Array {
  const count = LEAST_POINTS + Math.ceil(0.75 * terms * step * cut);
  const { points, weights } = gaussLegendre(count, 0, cut);
  const integrals = new Float64Array(terms);
  const scale = 2 / Math.sqrt(2 * Math.PI * share);
  points.forEach((y, j) => {
    const weight = scale * (weights[j] as number) * Math.exp((-0.5 * y * y) / share);
    for (let k = 0; k < terms; k++) {
      integrals[k] = (integrals[k] as number) + weight * Math.cos(k * step * y);
    }
  });
  return integrals;
}
