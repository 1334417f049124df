import { descendLine, lineState } from '../wear/descendLine';

/**
 * A member line given its parent line: mean = offset + map x parent, and the Cholesky factor of its covariance in units of the
 * noise variance.
 */
export interface LineFactor {
  offset0: number;
  offset1: number;
  map00: number;
  map01: number;
  map10: number;
  map11: number;
  root00: number;
  root10: number;
  root11: number;
}

/** Makes a factor to be filled. */
export function lineFactor(): LineFactor {
  const none = { map00: 0, map01: 0, map10: 0, map11: 0, root00: 0, root10: 0, root11: 0 };
  return { offset0: 0, offset1: 0, ...none };
}

/** Sums of a member: S (three numbers) and r (two), see descendLine. */
export interface MemberSums {
  readonly s00: number;
  readonly s01: number;
  readonly s11: number;
  readonly r0: number;
  readonly r1: number;
}

/** Sums of a member without readings. */
export const noSums: MemberSums = { s00: 0, s01: 0, s11: 0, r0: 0, r1: 0 };

const line = lineState();

/**
 * Fills the factor of a member with squared ratios d0 (start) and d1 (slope) and the given sums.
 *
 * descendLine is affine in the parent, so three parents show its map; with a parent that is known its covariance is H D.
 */
export function fillFactor(factor: LineFactor, d0: number, d1: number, sums: MemberSums): void {
  descendFrom(0, 0, d0, d1, sums);
  factor.offset0 = line.start;
  factor.offset1 = line.slope;
  factor.root00 = Math.sqrt(line.startStart);
  factor.root10 = factor.root00 > 0 ? line.startSlope / factor.root00 : 0;
  factor.root11 = Math.sqrt(Math.max(0, line.slopeSlope - factor.root10 * factor.root10));
  const without = { ...sums, r0: 0, r1: 0 };
  descendFrom(1, 0, d0, d1, without);
  factor.map00 = line.start;
  factor.map10 = line.slope;
  descendFrom(0, 1, d0, d1, without);
  factor.map01 = line.start;
  factor.map11 = line.slope;
}

function descendFrom(start: number, slope: number, d0: number, d1: number, sums: MemberSums): void {
  line.start = start;
  line.slope = slope;
  line.startStart = 0;
  line.startSlope = 0;
  line.slopeSlope = 0;
  descendLine(line, d0, d1, sums.s00, sums.s01, sums.s11, sums.r0, sums.r1);
}
