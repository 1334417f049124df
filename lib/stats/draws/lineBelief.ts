import type { LineMixture } from '../wear/types';

/**
 * What is believed of a line in two moments: means and squared t scales of (start, slope), and the noise variance of a reading.
 *
 * With Student's t of the mixture's degrees of freedom these give the chances of the mixture nearly.
 */
export interface LineBelief {
  start: number;
  slope: number;
  startStart: number;
  startSlope: number;
  slopeSlope: number;
  noise: number;
}

/** The mixture's mean line, its mean squared t scales with the spread of the components' lines, and its mean noise variance. */
export function lineBelief(mixture: LineMixture): LineBelief {
  const belief = { start: 0, slope: 0, startStart: 0, startSlope: 0, slopeSlope: 0, noise: 0 };
  const { weight } = mixture;
  for (let k = 0; k < weight.length; k++) {
    belief.start += (weight[k] as number) * (mixture.start[k] as number);
    belief.slope += (weight[k] as number) * (mixture.slope[k] as number);
  }
  for (let k = 0; k < weight.length; k++) {
    const share = weight[k] as number;
    const start = (mixture.start[k] as number) - belief.start;
    const slope = (mixture.slope[k] as number) - belief.slope;
    belief.startStart += share * ((mixture.startStart[k] as number) + start * start);
    belief.startSlope += share * ((mixture.startSlope[k] as number) + start * slope);
    belief.slopeSlope += share * ((mixture.slopeSlope[k] as number) + slope * slope);
    belief.noise += share * (mixture.s2[k] as number);
  }
  return belief;
}

/** The same belief of the line mirrored, so that a lower limit becomes an upper one. */
export function mirrored(belief: LineBelief): LineBelief {
  return { ...belief, start: -belief.start, slope: -belief.slope };
}

/** Takes over the numbers of another belief. */
export function copyBelief(into: LineBelief, from: LineBelief): void {
  into.start = from.start;
  into.slope = from.slope;
  into.startStart = from.startStart;
  into.startSlope = from.startSlope;
  into.slopeSlope = from.slopeSlope;
  into.noise = from.noise;
}

/** Squared t scale of the level at x. */
export function levelSquare(belief: LineBelief, x: number): number {
  return Math.max(0, belief.startStart + x * (2 * belief.startSlope + x * belief.slopeSlope));
}

/** Learns from one reading y (mm) at x (run hours / 10,000): the linear update of the means and squared scales. */
export function learn(belief: LineBelief, x: number, y: number): void {
  const withStart = belief.startStart + x * belief.startSlope;
  const withSlope = belief.startSlope + x * belief.slopeSlope;
  const variance = withStart + x * withSlope + belief.noise;
  if (!(variance > 0)) return;
  const surprise = (y - belief.start - x * belief.slope) / variance;
  belief.start += withStart * surprise;
  belief.slope += withSlope * surprise;
  belief.startStart -= (withStart * withStart) / variance;
  belief.startSlope -= (withStart * withSlope) / variance;
  belief.slopeSlope -= (withSlope * withSlope) / variance;
}
