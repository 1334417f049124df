import type { WearWorkspace } from './absorb';
import { type AngleRange, MEAN_ANGLE, RIGHT_ANGLE } from './angleRange';
import { differenceHessian } from './differenceHessian';
import { minimiseRatios } from './minimiseRatios';
import { type RatioCriterion, ratioCriterion } from './ratioCriterion';
import { ratioScale } from './ratioScale';
import { solvePositive } from './solvePositive';

const START = 0.7;
const REACH = 4;
const NARROWEST = 0.01;
const MOST_RIDGE = 1e15;
const FARTHEST = 100;
/** From here on a mode that lies near a fit of many units says the size of its ratio by itself. */
const CLEAR_OF_ZERO = 0.25;
const SHORT_STEP = 1e-5;
/** Where few nodes are laid by the curvature, a short step's rounding would show in the tenth digit of what comes of them. */
const LONG_STEP = 1e-3;
const LOOKED_AT = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, FARTHEST];

/**
 * Ranges of the four angles round the mode of the posterior weight; order as in ratioNodes.
 *
 * The scale of each ratio is its rough size, so that the weight lies well inside the angle's range. The range is
 * the mode plus and minus 4 standard deviations, from the curvature of the log weight, cut at 0 and at the right
 * angle. With inTotals, as for groups with hardly more runs than units, the mode is that of the totals, and every
 * share of run and unit is open.
 *
 * @param near ratios that the mode lies near, in the order startRun, slopeRun, startUnit, slopeUnit, if they are known
 */
export function modeRanges(
  workspace: WearWorkspace,
  count: number,
  inTotals: boolean,
  near: readonly number[] | null = null,
): readonly AngleRange[] {
  const axes = inTotals ? [2, 3] : [0, 1, 2, 3];
  const criterion = ratioCriterion(workspace, workspace.statistics.readings - 4);
  const unscaled = ratioScale(workspace.statistics);
  const start = Float64Array.from([0, 1, 2, 3], (j) => {
    if (!axes.includes(j)) return 0;
    return near === null ? START : Math.asinh((near[j] as number) * (unscaled[j] as number));
  });
  const { psi } = minimiseRatios(criterion, unscaled, start, axes);
  const mode = psi.map((value, j) => Math.abs(Math.sinh(value) / (unscaled[j] as number)));
  const scale = mode.map((ratio, j) => {
    if (near !== null && ratio > CLEAR_OF_ZERO) return ratio / Math.tan(MEAN_ANGLE);
    const rough = scaleOf(criterion, mode, j);
    // Where the mode says the same it is the better word for the size, and saves laying the nodes anew on another scale.
    return ratio > rough / 2 && ratio < 2 * rough ? ratio / Math.tan(MEAN_ANGLE) : rough;
  });
  const angles = mode.map((ratio, j) => Math.atan(ratio / (scale[j] as number)));
  const gradientAt = (moved: Float64Array) => {
    const gradient = angleGradient(criterion, scale, moved);
    return Float64Array.from(axes, (axis) => gradient[axis] as number);
  };
  const hessian = differenceHessian(
    angles,
    axes,
    gradientAt(angles),
    gradientAt,
    near === null ? SHORT_STEP : LONG_STEP,
  );
  const ranges = axes.map((axis, position): AngleRange => {
    // The criterion is -2 log weight: its Hessian is twice the information.
    const reach = Math.max(NARROWEST, REACH * Math.sqrt(2 * inverseDiagonal(hessian, axes.length, position)));
    const centre = angles[axis] as number;
    const [low, high] = [Math.max(0, centre - reach), Math.min(RIGHT_ANGLE, centre + reach)];
    return { kind: inTotals ? 'total' : 'ratio', scale: scale[axis] as number, low, high, count };
  });
  if (!inTotals) return ranges;
  const share: AngleRange = { kind: 'share', scale: 1, low: 0, high: RIGHT_ANGLE, count };
  return [...ranges, share, share];
}

/**
 * Ratio at which the posterior density of its logarithm is highest with the other ratios at the mode, looked for
 * at a few ratios from 0.01 to 100: it says roughly how large the ratio is, also where the mode is zero or the
 * data do not bound it.
 */
function scaleOf(criterion: RatioCriterion, mode: Float64Array, axis: number): number {
  const densities = LOOKED_AT.map((ratio) => {
    mode.forEach((value, j) => {
      criterion.squared[j] = (j === axis ? ratio : Math.min(value, FARTHEST)) ** 2;
    });
    return -0.5 * criterion.evaluate(false) + Math.log(ratio) - Math.log1p(ratio * ratio);
  });
  return LOOKED_AT[densities.indexOf(Math.max(...densities))] as number;
}

function angleGradient(criterion: RatioCriterion, scale: Float64Array, angles: Float64Array): Float64Array {
  const ratios = angles.map((angle, j) => (scale[j] as number) * Math.tan(angle));
  criterion.squared.set(ratios.map((ratio) => ratio * ratio));
  criterion.evaluate(true);
  return ratios.map((ratio, j) => {
    const perAngle = (scale[j] as number) + (ratio * ratio) / (scale[j] as number);
    return (criterion.gradient[j] as number) * 2 * ratio * perAngle;
  });
}

/** Diagonal element of the inverse; a flat or hollow direction is held to some curvature, up to MOST_RIDGE. */
function inverseDiagonal(hessian: Float64Array, size: number, position: number): number {
  const unit = Float64Array.from({ length: size }, (_, k) => (k === position ? 1 : 0));
  for (let ridge = 0; ridge < MOST_RIDGE; ridge = ridge === 0 ? 1 : ridge * 4) {
    const column = solvePositive(hessian, unit, ridge);
    if (column) return column[position] as number;
  }
  return 1;
}
