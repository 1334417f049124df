/** A line (start, slope) with its covariance in units of s2, filled in place. */
export interface LineState {
  start: number;
  slope: number;
  startStart: number;
  startSlope: number;
  slopeSlope: number;
}

/** Makes a line state to be filled. */
export function lineState(): LineState {
  return { start: 0, slope: 0, startStart: 0, startSlope: 0, slopeSlope: 0 };
}

/**
 * Carries a line one level down: a member line is the parent line plus its own departure, with squared ratios
 * d0 (start) and d1 (slope), given the member's sums S (three numbers) and r (two).
 *
 * With D = diag(d0, d1) and H = (I + D S)^-1: mean = H (parent + D r), covariance = H D + H parent H'. Applied
 * from group to unit and from unit to run it is the same as G beta + H K[unit] q + K[run] r with covariance
 * K[run] + H K[unit] H' + G A^-1 G'. Only the member's own sums enter: sums of its siblings are in the parent.
 */
export function descendLine(
  line: LineState,
  d0: number,
  d1: number,
  s00: number,
  s01: number,
  s11: number,
  r0: number,
  r1: number,
): void {
  const { startStart, startSlope, slopeSlope } = line;
  const inverse = 1 / (1 + s00 * d0 + s11 * d1 + (s00 * s11 - s01 * s01) * d0 * d1);
  const h00 = (1 + d1 * s11) * inverse;
  const h01 = -d0 * s01 * inverse;
  const h10 = -d1 * s01 * inverse;
  const h11 = (1 + d0 * s00) * inverse;
  const start = line.start + d0 * r0;
  const slope = line.slope + d1 * r1;
  line.start = h00 * start + h01 * slope;
  line.slope = h10 * start + h11 * slope;
  const g00 = h00 * startStart + h01 * startSlope;
  const g01 = h00 * startSlope + h01 * slopeSlope;
  const g10 = h10 * startStart + h11 * startSlope;
  const g11 = h10 * startSlope + h11 * slopeSlope;
  line.startStart = h00 * d0 + g00 * h00 + g01 * h01;
  line.startSlope = h01 * d1 + g00 * h10 + g01 * h11;
  line.slopeSlope = h11 * d1 + g10 * h10 + g11 * h11;
}
