import { differenceHessian } from './differenceHessian';
import type { RatioCriterion } from './ratioCriterion';
import { solvePositive } from './solvePositive';

/** Below this a ratio may be settled at zero; beyond FAR it is not followed (ratio 600,000). */
const NEAR_ZERO = 1e-3;
const FAR = 14;
const RELEASED = 0.05;
const LONGEST_STEP = 1.5;
const ENOUGH = 1e-9;
/** What is left to fall drowns in the criterion's rounding from about this share of it on: no shorter step would be seen to be one. */
const ROUNDING = 1e-11;
const MOST_RIDGE = 1e6;
/** Small: a ridge ten times what is needed makes steps as many times too short where the descent leaves a saddle near a ratio of zero. */
const RIDGE_GROWTH = 2;

/** Where a descent ended, on the fitting scale psi: ratio = sinh(psi) / scale. */
export interface RatioMinimum {
  readonly psi: Float64Array;
  readonly value: number;
  readonly converged: boolean;
}

/**
 * Minimises the criterion over the free ratios by Newton's method, from a given start.
 *
 * On the scale psi = arsinh(ratio x scale) the criterion is even and smooth, so a ratio of zero is an interior
 * point. The Hessian is a difference of analytic gradients, made positive by a ridge; steps are shortened until
 * the criterion falls. A ratio near zero from which the criterion rises is settled at zero; one at zero from
 * which it falls is released, once. Ratios that are not free stay where the start puts them.
 */
export function minimiseRatios(
  criterion: RatioCriterion,
  scale: Float64Array,
  start: Float64Array,
  free: readonly number[],
): RatioMinimum {
  const psi = Float64Array.from(start);
  const released = new Set<number>();
  for (let iteration = 0; iteration < 60; iteration++) {
    const here = evaluateAt(criterion, scale, psi, true);
    const before = psi.slice();
    const active = free.filter((j) => isActive(criterion, psi, released, j));
    const isMoved = psi.some((value, j) => value !== before[j]);
    const value = isMoved ? evaluateAt(criterion, scale, psi, true) : here;
    const gradient = psiGradient(criterion, scale, psi, active);
    const hessian = differenceHessian(psi, active, gradient, (moved) => {
      evaluateAt(criterion, scale, moved, true);
      return psiGradient(criterion, scale, moved, active);
    });
    const step = newtonStep(hessian, gradient);
    const slope = step.reduce((sum, s, k) => sum + s * (gradient[k] as number), 0);
    const done = -slope < ENOUGH + ROUNDING * Math.abs(value);
    const moved = done
      ? move(psi, active, step, 1)
      : descend(criterion, scale, psi, active, step, value, slope);
    if (moved === null) break;
    psi.set(moved);
    if (!done) continue;
    // What the last step has left is a hundred-thousandth of it, more than the same data summed in another order differ by: once more.
    evaluateAt(criterion, scale, psi, true);
    psi.set(move(psi, active, newtonStep(hessian, psiGradient(criterion, scale, psi, active)), 1));
    const far = psi.some((p) => Math.abs(p) >= FAR);
    return { psi, value: evaluateAt(criterion, scale, psi, false), converged: !far };
  }
  return { psi, value: evaluateAt(criterion, scale, psi, false), converged: false };
}

function isActive(criterion: RatioCriterion, psi: Float64Array, released: Set<number>, j: number): boolean {
  if (Math.abs(psi[j] as number) >= NEAR_ZERO || released.has(j)) return true;
  const rises = (criterion.gradient[j] as number) >= 0;
  if (rises) {
    psi[j] = 0;
    return false;
  }
  released.add(j);
  psi[j] = RELEASED;
  return true;
}

function evaluateAt(
  criterion: RatioCriterion,
  scale: Float64Array,
  psi: Float64Array,
  withGradient: boolean,
): number {
  for (let j = 0; j < 4; j++) {
    criterion.squared[j] = (Math.sinh(psi[j] as number) / (scale[j] as number)) ** 2;
  }
  return criterion.evaluate(withGradient);
}

function psiGradient(
  criterion: RatioCriterion,
  scale: Float64Array,
  psi: Float64Array,
  active: readonly number[],
): Float64Array {
  return Float64Array.from(active, (j) => {
    const unscaled = Math.sinh(2 * (psi[j] as number)) / (scale[j] as number) ** 2;
    return (criterion.gradient[j] as number) * unscaled;
  });
}

function newtonStep(hessian: Float64Array, gradient: Float64Array): Float64Array {
  const size = gradient.length;
  const downhill = gradient.map((g) => -g);
  let diagonal = 1e-8;
  for (let k = 0; k < size; k++) diagonal = Math.max(diagonal, Math.abs(hessian[k * size + k] as number));
  for (
    let ridge = 0;
    ridge < MOST_RIDGE * diagonal;
    ridge = ridge === 0 ? 1e-6 * diagonal : ridge * RIDGE_GROWTH
  ) {
    const step = solvePositive(hessian, downhill, ridge);
    if (step) return step;
  }
  return new Float64Array(size);
}

function move(psi: Float64Array, active: readonly number[], step: Float64Array, share: number): Float64Array {
  const moved = Float64Array.from(psi);
  active.forEach((j, k) => {
    const target = (psi[j] as number) + share * (step[k] as number);
    moved[j] = Math.max(-FAR, Math.min(FAR, target));
  });
  return moved;
}

function descend(
  criterion: RatioCriterion,
  scale: Float64Array,
  psi: Float64Array,
  active: readonly number[],
  step: Float64Array,
  value: number,
  slope: number,
): Float64Array | null {
  const largest = step.reduce((most, s) => Math.max(most, Math.abs(s)), 0);
  let share = Math.min(1, LONGEST_STEP / largest);
  for (let halving = 0; halving < 40; halving++, share /= 3) {
    const moved = move(psi, active, step, share);
    const reached = evaluateAt(criterion, scale, moved, false);
    if (reached <= value + 1e-4 * share * slope + 1e-13 * Math.abs(value)) return moved;
  }
  return null;
}
