/** Ratios up to about this size hardly matter, whatever their relative size. */
const SMALL = 0.05;

/** Widest cell that is merged into one node, on the merging scale: 25 % of a ratio. */
export const MERGED_WIDTH = 0.25;

/** Scale on which equal steps change forecasts alike: logarithmic in the ratio, but linear below 0.05 or what else is small. */
export function mergeScale(ratio: number, small = SMALL): number {
  return Math.asinh(ratio / small);
}

/** Ratio at a position on the merging scale. */
export function mergedRatio(position: number, small = SMALL): number {
  return small * Math.sinh(position);
}
