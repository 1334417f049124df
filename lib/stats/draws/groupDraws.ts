import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import type { WearPosterior } from '../wear/types';
import type { SeededStream } from './seededStream';

/** What all units of a group share in each draw: the node of the ratios, the noise and the fixed effects. */
export interface GroupDraws {
  readonly count: number;
  /** Node of every draw. */
  readonly node: Int32Array;
  /** Draws in order of their node, so that what belongs to a node is made once. */
  readonly byNode: Int32Array;
  /** Noise standard deviation of every draw, mm. */
  readonly sdNoise_mm: Float64Array;
  /** Intercept above the posterior's centre (mm) and slope (mm per 10,000 h) of every draw. */
  readonly beta0: Float64Array;
  readonly beta1: Float64Array;
}

/**
 * Draws node, noise and fixed effects from the integrated posterior.
 *
 * Nodes by systematic sampling of their weights; noise variance = s2 x nu / chi-square(nu), its probabilities stratified; beta
 * normal about the node's estimate with covariance noise variance x A^-1. Both are then put in random order. Throws unless count
 * is a positive whole number.
 */
export function drawGroup(posterior: WearPosterior, stream: SeededStream, count: number): GroupDraws {
  if (!(Number.isInteger(count) && count > 0)) {
    throw new Error(`drawGroup requires a positive whole number of draws, got ${count}`);
  }
  const { weight, s2, degreesOfFreedom, inverse00, inverse01, inverse11 } = posterior;
  const byNode = stream.shuffled(count);
  const node = systematicNodes(weight, byNode, stream.uniform());
  const chanceOrder = stream.shuffled(count);
  const offset = stream.uniform();
  const normals = new Float64Array(2 * count);
  stream.normals(normals);
  const sdNoise_mm = new Float64Array(count);
  const beta0 = new Float64Array(count);
  const beta1 = new Float64Array(count);
  for (let draw = 0; draw < count; draw++) {
    const k = node[draw] as number;
    const chance = Math.max(1e-12, ((chanceOrder[draw] as number) + offset) / count);
    const chiSquare = chiSquareQuantile(chance, degreesOfFreedom);
    const sd = Math.sqrt(((s2[k] as number) * degreesOfFreedom) / chiSquare);
    // Cholesky factor of A^-1; rounding may not make its last pivot negative.
    const l00 = Math.sqrt(inverse00[k] as number);
    const l10 = l00 > 0 ? (inverse01[k] as number) / l00 : 0;
    const l11 = Math.sqrt(Math.max(0, (inverse11[k] as number) - l10 * l10));
    const [z0, z1] = [normals[2 * draw] as number, normals[2 * draw + 1] as number];
    sdNoise_mm[draw] = sd;
    beta0[draw] = (posterior.beta0[k] as number) + sd * l00 * z0;
    beta1[draw] = (posterior.beta1[k] as number) + sd * (l10 * z0 + l11 * z1);
  }
  return { count, node, byNode, sdNoise_mm, beta0, beta1 };
}

/** Every node as often as its weight says, to within one draw: the i-th draw takes the node at weight (i + offset) / count. */
function systematicNodes(weight: Float64Array, order: Int32Array, offset: number): Int32Array {
  const node = new Int32Array(order.length);
  let k = 0;
  let sum = weight[0] as number;
  order.forEach((draw, i) => {
    while ((i + offset) / order.length >= sum && k < weight.length - 1) sum += weight[++k] as number;
    node[draw] = k;
  });
  return node;
}
