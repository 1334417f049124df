import { percentText } from '../sentenceNumbers';
import { chancePast, levelAt, levelQuantile, slopeOf } from '../wear/forecast';
import { chanceToFill, fillChance } from '../wear/mixtureChance';
import { newtonRoot } from '../wear/newtonRoot';
import { studentQuantile } from '../wear/studentTable';
import type { LineMixture } from '../wear/types';

/** Median with the 80 and 95 % intervals. */
export interface IntervalSet {
  readonly median: number;
  readonly lower80: number;
  readonly upper80: number;
  readonly lower95: number;
  readonly upper95: number;
}

/** Median with the 80 % interval. */
export type ShortInterval = Pick<IntervalSet, 'median' | 'lower80' | 'upper80'>;

/** What files hold of a unit's wear rate against that of its sisters. */
export interface ShortRateRatio {
  readonly ratio: ShortInterval | null;
  readonly tailProbability: number;
}

/** A unit's wear rate against that of its sisters. */
export interface RateRatio {
  /** Unit's rate / group's rate; null where the group's rate may be zero, see reason. */
  readonly ratio: IntervalSet | null;
  /** Why there is no ratio. */
  readonly reason: string | null;
  /** Unit's rate less the group's, mm per 10,000 h: always there. */
  readonly difference_mm_per_10kh: IntervalSet;
  /** Two-sided: twice the smaller chance of the unit's rate lying above or below the group's. */
  readonly tailProbability: number;
}

/** The group's rate must lie on one side of zero but for this chance, or its ratio has no 95 % interval. */
const MOST_OTHER_SIDE = 0.01;
const PRECISION = 1e-9;
const MOST_DOUBLINGS = 60;

/**
 * Ratio (b1 + u) / b1 of a unit's wear rate to its group's, with intervals, and how far from 1 it is.
 *
 * Quantiles are where P(b1 + u <= r b1) reaches 0.025, 0.1, 0.5, 0.9, 0.975, an exact sum of Student t tails over
 * the mixture. That is the distribution of the ratio but for the chance that b1 lies on the other side of zero;
 * where this chance exceeds 1 % there is no ratio. A falling series has a ratio too: both rates are taken with
 * the group's sign. The tail probability needs no ratio: it is that of u = 0 (Fieller 1954, Journal of the Royal
 * Statistical Society B 16, 175, with the mixture in place of one t).
 *
 * @param rates unit's and group's rate jointly, from unitRate
 */
export function rateRatio(rates: LineMixture): RateRatio {
  const difference = (below: number) => levelQuantile(rates, -1, below);
  return {
    ...ratioOf(rates, intervalSet),
    difference_mm_per_10kh: intervalSet(difference),
    tailProbability: tailProbability(rates),
  };
}

/** The same with the 80 % interval only, as files hold it: three quantiles instead of ten. */
export function shortRateRatio(rates: LineMixture): ShortRateRatio {
  return { ratio: ratioOf(rates, shortInterval).ratio, tailProbability: tailProbability(rates) };
}

function tailProbability(rates: LineMixture): number {
  // Level at x of the mixture is unit's rate + x group's rate: at -1 the difference, at -r unit - r group.
  const above = chancePast(rates, 0, 'upper', -1);
  return Math.min(1, 2 * Math.min(above, 1 - above));
}

type QuantileOf = (below: number) => number;

function ratioOf<Interval>(
  rates: LineMixture,
  intervalOf: (quantile: QuantileOf) => Interval,
): { readonly ratio: Interval | null; readonly reason: string | null } {
  const group = slopeOf(rates);
  const signed = group.mean >= 0 ? rates : mirrored(rates);
  const { slope: start, slopeSlope: startStart } = signed;
  const otherSide = chancePast({ ...signed, start, startStart }, 0, 'lower', 0);
  if (otherSide > MOST_OTHER_SIDE) {
    const chance = percentText(otherSide, 1);
    const reason = `the wear rate of the group may be zero or of the other sign (chance ${chance}), so that a ratio to it says nothing`;
    return { ratio: null, reason };
  }
  const centre = levelAt(signed, 0).mean / Math.abs(group.mean);
  return { ratio: intervalOf((below) => ratioQuantile(signed, centre, below)), reason: null };
}

function shortInterval(quantile: QuantileOf): ShortInterval {
  return { median: quantile(0.5), lower80: quantile(0.1), upper80: quantile(0.9) };
}

function intervalSet(quantile: QuantileOf): IntervalSet {
  return {
    ...shortInterval(quantile),
    lower95: quantile(0.025),
    upper95: quantile(0.975),
  };
}

/**
 * Ratio at which the chance is reached first outwards from the centre. The guess is the mean over the components of where each
 * would reach it if the scale of their level stayed as it is at the centre.
 */
function ratioQuantile(rates: LineMixture, centre: number, below: number): number {
  const found = chanceToFill();
  const excess = (ratio: number) => {
    fillChance(found, rates, -ratio, 0, 1, 0, 0);
    return found.chance - below;
  };
  const excessAtCentre = excess(centre);
  if (excessAtCentre === 0) return centre;
  const outwards = excessAtCentre < 0 ? 1 : -1;
  const guess = guessOf(rates, centre, studentQuantile(rates.table, below));
  const away = Math.abs(guess - centre);
  const least = 1e-3 * Math.max(1, Math.abs(centre));
  let [near, step] = [centre, Number.isFinite(away) ? Math.max(2 * away, least) : least];
  for (let k = 0; k < MOST_DOUBLINGS; k++, step *= 2) {
    const far = near + outwards * step;
    if (excess(far) * outwards >= 0) {
      const [low, high] = outwards === 1 ? [near, far] : [far, near];
      return newtonRoot(excess, () => -found.byX, guess, low, high, true, PRECISION * Math.max(1, step));
    }
    near = far;
  }
  throw new Error(`rateRatio requires rates whose ratio reaches a chance of ${below}, got none`);
}

function guessOf(rates: LineMixture, centre: number, standard: number): number {
  const { weight, start, slope, startStart, startSlope, slopeSlope } = rates;
  let sum = 0;
  for (let k = 0; k < weight.length; k++) {
    const square =
      (startStart[k] as number) -
      centre * (2 * (startSlope[k] as number) - centre * (slopeSlope[k] as number));
    const reached = (start[k] as number) + standard * Math.sqrt(Math.max(0, square));
    sum += ((weight[k] as number) * reached) / (slope[k] as number);
  }
  return sum;
}

function mirrored(rates: LineMixture): LineMixture {
  return { ...rates, start: rates.start.map((rate) => -rate), slope: rates.slope.map((rate) => -rate) };
}
