import { studentTable } from '../../../lib/stats/wear/studentTable';
import type { WearPosterior } from '../../../lib/stats/wear/types';

/** What one node of a posterior states. */
export interface OneNode {
  /** Ratios SD / noise SD: start and slope of the run, start and slope of the unit. */
  readonly ratios: readonly [number, number, number, number];
  readonly beta: readonly [number, number];
  /** Inverse of the information matrix: 00, 01, 11. */
  readonly inverse: readonly [number, number, number];
  readonly s2: number;
  readonly degreesOfFreedom: number;
  readonly yCentre: number;
}

/** A posterior with a single node: everything is then closed form. */
export function oneNodePosterior(node: OneNode): WearPosterior {
  const { ratios, beta, inverse, s2, degreesOfFreedom, yCentre } = node;
  const one = (value: number) => Float64Array.of(value);
  return {
    weight: one(1),
    startRun: one(ratios[0]),
    slopeRun: one(ratios[1]),
    startUnit: one(ratios[2]),
    slopeUnit: one(ratios[3]),
    beta0: one(beta[0]),
    beta1: one(beta[1]),
    inverse00: one(inverse[0]),
    inverse01: one(inverse[1]),
    inverse11: one(inverse[2]),
    s2: one(s2),
    runPair: Int32Array.of(0),
    runPairs: 1,
    degreesOfFreedom,
    table: studentTable(degreesOfFreedom),
    yCentre,
    placement: 'tangent',
    nodesComputed: 1,
    edgeShare: 0,
  };
}
