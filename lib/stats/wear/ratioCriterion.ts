import { absorbRuns, absorbUnits, type WearWorkspace } from './absorb';
import { ratioGradient } from './ratioGradient';
import { type GroupSolution, groupSolution, solveGroup } from './solveGroup';

/** Criterion degrees log RSS + log determinants + log |A| of one group as a function of the squared ratios. */
export interface RatioCriterion {
  /** Squared ratios in the order startRun, slopeRun, startUnit, slopeUnit. */
  readonly squared: Float64Array;
  /** Derivatives by the squared ratios, filled by evaluate with withGradient. */
  readonly gradient: Float64Array;
  readonly solution: GroupSolution;
  readonly evaluate: (withGradient: boolean) => number;
  readonly evaluations: () => number;
}

/**
 * Makes the criterion of a group: with degrees = N - 2 it is the restricted likelihood's (times -2, up to a
 * constant), with degrees = N - 4 that of the posterior weight.
 */
export function ratioCriterion(workspace: WearWorkspace, degrees: number): RatioCriterion {
  const squared = new Float64Array(4);
  const gradient = new Float64Array(4);
  const solution = groupSolution();
  let count = 0;
  const evaluate = (withGradient: boolean): number => {
    count += 1;
    const [a2, v2, w2, u2] = squared as unknown as [number, number, number, number];
    const runs = absorbRuns(workspace, a2, v2);
    const units = absorbUnits(workspace, w2, u2);
    solveGroup(workspace, solution);
    if (withGradient) ratioGradient(workspace, solution, squared, degrees, gradient);
    return degrees * Math.log(solution.residualSquares) + runs + units + solution.logDeterminant;
  };
  return { squared, gradient, solution, evaluate, evaluations: () => count };
}
