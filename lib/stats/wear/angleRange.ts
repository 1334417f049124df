/** Right angle: atan of an infinite ratio. */
export const RIGHT_ANGLE = Math.PI / 2;

const FEWEST = 5;
const MOST = 16;
/** A cell's own width bounds how finely its share can tell the spread. */
const BLUR = 0.3;
/** Share of weight below which cells at an end count as empty. */
const EMPTY = 2e-5;
const WIDEN_CELLS = 2;
/** Mean angle at which the weight is resolved with fewest cells, and how far off it moves the scale. */
export const MEAN_ANGLE = 0.4;
const OFF_CENTRE = 0.3 * MEAN_ANGLE;
/** Most that the scale changes at once: a first look may be too coarse to say more. */
const MOST_CHANGE = 3;

/**
 * Range of one angle, divided into equal cells with a node in each.
 *
 * A 'ratio' is scale x tan(angle); a 'total' is the root of the summed squares of the run's and the unit's ratio,
 * scale x tan(angle) too; a 'share' is how the total is divided between run (0) and unit (90 degrees), as a
 * prior probability times 90 degrees, see ratioNodes.
 */
export interface AngleRange {
  readonly kind: 'ratio' | 'total' | 'share';
  readonly scale: number;
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

/** Where in its cell a node lies: in the middle, see rangeAngles for a total. */
const MIDDLE = 0.5;
const ODD_END = (1 - Math.sqrt(1 / 3)) / 2;

/**
 * Angles of the nodes.
 *
 * The density is even in a ratio and in a share at both ends, so midpoints are exact there. In a total it is odd
 * at 0, being proportional to the total, and the offset of the two-point Gauss rule removes the leading error of
 * the Euler-Maclaurin expansion.
 */
export function rangeAngles({ kind, low, high, count }: AngleRange): Float64Array {
  const offset = kind === 'total' && low <= 0 ? ODD_END : MIDDLE;
  return Float64Array.from({ length: count }, (_, k) => low + ((k + offset) * (high - low)) / count);
}

/**
 * Larger share of the two outermost nodes, counting only ends beyond which there is more range.
 *
 * At 0 and at the right angle the range ends by nature: the weight is even in the angle at both.
 */
export function edgeShare({ low, high }: AngleRange, shares: Float64Array): number {
  const first = low > 0 ? (shares[0] as number) : 0;
  const last = high < RIGHT_ANGLE ? (shares[shares.length - 1] as number) : 0;
  return Math.max(first, last);
}

/** How fitRange divides: the share an outermost node may carry, and the widest cell in standard deviations. */
export interface Fineness {
  readonly mostAtEdge: number;
  readonly widestCell: number;
  /** Whether the shares are fine enough to tell weight that falls from zero from a peak near zero. */
  readonly resolved: boolean;
}

/**
 * Range that fits the shares of weight seen on its cells: widened at an end that carries too much, cut where
 * cells are empty but for one that stays as a guard, rescaled so that the mean angle is near 0.4, and divided so
 * that no cell is wider than asked.
 */
export function fitRange(range: AngleRange, shares: Float64Array, fineness: Fineness): AngleRange {
  const { kind, scale, low, high, count } = range;
  const { mostAtEdge, widestCell, resolved } = fineness;
  const cell = (high - low) / count;
  const fromLow = (shares[0] as number) > mostAtEdge ? -WIDEN_CELLS : emptyCells(shares);
  const fromHigh =
    (shares[count - 1] as number) > mostAtEdge ? -WIDEN_CELLS : emptyCells(shares.toReversed());
  const fitted = {
    kind,
    scale,
    low: Math.max(0, low + fromLow * cell),
    high: Math.min(RIGHT_ANGLE, high - fromHigh * cell),
  };
  const { mean, deviation } = spread(range, shares, resolved);
  const centred = recentre(fitted, mean);
  // At the mean, an angle on the old scale is worth this much on the new one.
  const t = Math.tan(mean);
  const ratio = centred.scale / scale;
  const width = (deviation * (1 + t * t)) / (ratio + (t * t) / ratio);
  const needed = Math.ceil((centred.high - centred.low) / (widestCell * width) - 0.01);
  return { ...centred, count: Math.max(FEWEST, Math.min(MOST, needed)) };
}

/** The same range of ratios on the scale that puts the mean angle where it should be, if it is far from there. */
function recentre(range: Omit<AngleRange, 'count'>, mean: number): Omit<AngleRange, 'count'> {
  if (range.kind === 'share' || Math.abs(mean - MEAN_ANGLE) < OFF_CENTRE) return range;
  const change = Math.tan(mean) / Math.tan(MEAN_ANGLE);
  const scale = range.scale * Math.max(1 / MOST_CHANGE, Math.min(MOST_CHANGE, change));
  const convert = (angle: number) =>
    angle >= RIGHT_ANGLE ? RIGHT_ANGLE : Math.atan((range.scale * Math.tan(angle)) / scale);
  return { kind: range.kind, scale, low: convert(range.low), high: convert(range.high) };
}

/** Cells at the start whose shares together count as empty, less the guard. */
function emptyCells(shares: Float64Array): number {
  let sum = 0;
  const stop = shares.findIndex((share) => {
    sum += share;
    return sum > EMPTY;
  });
  return Math.max(0, stop - 1);
}

/**
 * Mean angle and scale of the weight on an axis: its standard deviation (about 0 where it is seen to fall from
 * 0, because it is even there), or the width 1 / (2 sqrt(pi) integral of the squared density) if that is less,
 * as for a peak with a long shoulder; both are the standard deviation of a normal density.
 */
function spread(
  range: AngleRange,
  shares: Float64Array,
  resolved: boolean,
): { mean: number; deviation: number } {
  const cell = (range.high - range.low) / range.count;
  const angles = rangeAngles(range);
  const mean = shares.reduce((sum, share, k) => sum + share * (angles[k] as number), 0);
  const highest = 1.001 * (shares[0] as number);
  const fallsFromZero = resolved && range.low <= 0 && shares.every((share) => share <= highest);
  const centre = fallsFromZero ? 0 : mean;
  const variance = shares.reduce((sum, share, k) => sum + share * ((angles[k] as number) - centre) ** 2, 0);
  const squares = shares.reduce((sum, share) => sum + share * share, 0);
  const peak = (cell * (fallsFromZero ? 2 : 1)) / (2 * Math.sqrt(Math.PI) * squares);
  return { mean, deviation: Math.max(BLUR * cell, Math.min(Math.sqrt(variance), peak)) };
}
