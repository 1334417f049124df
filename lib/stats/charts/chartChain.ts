import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import type { ChartKind } from './ChartKind';
import { gaussLegendre, type Quadrature } from './gaussLegendre';

/** How EWMA limits are placed: exact at each reading, or at their final width from the first. */
export type EwmaLimits = 'exact' | 'final';

/** Probability that a chart has not signalled yet, one reading after the other. */
export interface ChartChain {
  /** Takes one more reading; returns the probability that the chart has not signalled up to and with it. */
  readonly next: () => number;
}

const LEAST_POINTS = 32;
/** Points for each standard deviation of the kernel that the range is wide. */
const POINTS_PER_SD = 2.5;
/** An upper chart's statistic hardly ever falls this many standard deviations below 0. */
const LOWEST = -8;
/** Limits this close to their final width are taken as final. */
const FINAL = 1e-13;

/**
 * The statistic of a chart of independent normal z (mean shift, standard deviation 1) as a chain from 0.
 *
 * The density of the statistic inside its limits is carried from reading to reading at Gauss and Legendre's
 * points (Nystroem's method). A two-sided cusum is two charts: this is the chain of its upper one.
 * Crowder 1987, Technometrics 29, 401 (ewma); Brook and Evans 1972, Biometrika 59, 539 (cusum).
 */
export function chartChain(
  chart: ChartKind,
  threshold: number,
  shift = 0,
  limits: EwmaLimits = 'exact',
): ChartChain {
  if (!(threshold > 0) || !Number.isFinite(threshold)) {
    throw new Error(`chartChain requires a positive threshold, got ${threshold}`);
  }
  if (chart.kind === 'individuals') return individualsChain(chart.sides, threshold, shift);
  if (chart.kind === 'cusum') return cusumChain(chart.k, threshold, shift);
  return ewmaChain(chart.sides, chart.lambda, threshold, shift, limits);
}

function individualsChain(sides: ChartKind['sides'], threshold: number, shift: number): ChartChain {
  const above = normalCdf(shift - threshold, 0, 1);
  const below = sides === 'both' ? normalCdf(-shift - threshold, 0, 1) : 0;
  let silent = 1;
  const next = () => {
    silent *= 1 - above - below;
    return silent;
  };
  return { next };
}

/** The cusum has a probability of being exactly 0 besides its density above 0. */
function cusumChain(k: number, threshold: number, shift: number): ChartChain {
  const drift = shift - k;
  const rule = gaussLegendre(pointsFor(threshold), 0, threshold);
  const kernel = kernelOf(rule, rule, (to, from) => density(to - from - drift));
  const toZero = rule.points.map((from) => normalCdf(-from - drift, 0, 1));
  const fromZero = rule.points.map((to) => density(to - drift));
  let atZero = 1;
  let above: Float64Array<ArrayBufferLike> = new Float64Array(rule.points.length);
  const next = () => {
    const carried = applyKernel(kernel, above);
    const mass = above.reduce(
      (sum, value, j) => sum + value * (rule.weights[j] as number) * (toZero[j] as number),
      0,
    );
    above = carried.map((value, i) => value + atZero * (fromZero[i] as number));
    atZero = atZero * normalCdf(-drift, 0, 1) + mass;
    return atZero + integral(rule, above);
  };
  return { next };
}

function ewmaChain(
  sides: ChartKind['sides'],
  lambda: number,
  threshold: number,
  shift: number,
  limits: EwmaLimits,
): ChartChain {
  if (!(lambda > 0 && lambda <= 1)) throw new Error(`chartChain requires 0 < lambda <= 1, got ${lambda}`);
  const finalSd = Math.sqrt(lambda / (2 - lambda));
  const lowest = sides === 'both' ? -threshold * finalSd : LOWEST * finalSd + Math.min(0, shift);
  const count = pointsFor((threshold * finalSd - lowest) / lambda);
  const ruleAt = (share: number) =>
    gaussLegendre(count, sides === 'both' ? lowest * share : lowest, threshold * finalSd * share);
  const step = (to: number, from: number) => density((to - (1 - lambda) * from) / lambda - shift) / lambda;
  const finalRule = ruleAt(1);
  let finalKernel: Float64Array | null = null;
  let before: Quadrature | null = null;
  let inside: Float64Array<ArrayBufferLike> = new Float64Array(count);
  let faded = 1;
  const carry = (from: Quadrature, to: Quadrature) => {
    if (from !== to) return kernelOf(to, from, step);
    finalKernel ??= kernelOf(to, from, step);
    return finalKernel;
  };
  const next = () => {
    faded *= (1 - lambda) ** 2;
    const rule = limits === 'final' || faded < FINAL ? finalRule : ruleAt(Math.sqrt(1 - faded));
    inside =
      before === null ? rule.points.map((to) => step(to, 0)) : applyKernel(carry(before, rule), inside);
    before = rule;
    return integral(rule, inside);
  };
  return { next };
}

function pointsFor(widthInSds: number): number {
  return LEAST_POINTS + Math.ceil(POINTS_PER_SD * widthInSds);
}

function density(z: number): number {
  return Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
}

/** Kernel from the points of one rule (with its weights) to those of another, row by row. */
function kernelOf(
  to: Quadrature,
  from: Quadrature,
  value: (to: number, from: number) => number,
): Float64Array {
  const [rows, columns] = [to.points.length, from.points.length];
  const kernel = new Float64Array(rows * columns);
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      kernel[i * columns + j] =
        (from.weights[j] as number) * value(to.points[i] as number, from.points[j] as number);
    }
  }
  return kernel;
}

function applyKernel(kernel: Float64Array, values: Float64Array): Float64Array {
  const columns = values.length;
  const result = new Float64Array(kernel.length / columns);
  for (let i = 0; i < result.length; i++) {
    let sum = 0;
    for (let j = 0; j < columns; j++) sum += (kernel[i * columns + j] as number) * (values[j] as number);
    result[i] = sum;
  }
  return result;
}

function integral({ weights }: Quadrature, values: Float64Array): number {
  return values.reduce((sum, value, k) => sum + value * (weights[k] as number), 0);
}
