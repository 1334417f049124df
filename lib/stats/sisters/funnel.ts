import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import type { WearFit, WearStatistics } from '../wear/types';
import { type OwnEstimate, type OwnSpreads, ownRate, ownStart } from './ownEstimates';

/** What a funnel compares: own wear rates (mm per 10,000 h) or own start levels (mm). */
export type FunnelOf = 'rate' | 'start';

/** One unit in the funnel, or why it is not there. */
export type FunnelUnit = { readonly unit: string } & (
  | (OwnEstimate & {
      /** (own value - group's value) / sqrt(unit spread squared + sd squared). */
      readonly score: number;
      /** Outside the 95 % limits, or the 99.8 % limits too. */
      readonly outside: 'none' | '95' | '99.8';
      readonly reason: null;
    })
  | { readonly reason: string }
);

/** Funnel of own values against how well each is known. */
export interface Funnel {
  /** The group's value. */
  readonly centre: number;
  /** Standard deviation between units. */
  readonly unitSd: number;
  readonly units: readonly FunnelUnit[];
}

/** Limits of the funnel at one standard deviation of own values. */
export interface FunnelLimits {
  readonly sd: number;
  readonly lower95: number;
  readonly upper95: number;
  readonly lower998: number;
  readonly upper998: number;
}

const [Z95, Z998] = [normalQuantile(0.975, 0, 1), normalQuantile(0.999, 0, 1)];

/**
 * Funnel of a group: each unit's own rate, or own start level, from its own readings alone, against its precision.
 *
 * Under the model an own value is normal about the group's with variance unit spread squared + its own variance;
 * spreads and centre are those of the REML fit, plugged in. A precision is 1 / sd, see ownRate and ownStart.
 */
export function funnel(statistics: WearStatistics, fit: WearFit, of: FunnelOf): Funnel {
  const spreads: OwnSpreads = {
    noise: fit.sdNoise_mm,
    startRun: fit.sdStartRun_mm,
    slopeRun: fit.sdSlopeRun_mm_per_10kh,
  };
  const [centre, unitSd, own] =
    of === 'rate'
      ? [fit.slope_mm_per_10kh, fit.sdSlopeUnit_mm_per_10kh, ownRate]
      : [fit.intercept_mm, fit.sdStartUnit_mm, ownStart];
  const units = statistics.unitNames.map((unit, index): FunnelUnit => {
    const estimate = own(statistics, index, spreads);
    if ('reason' in estimate) return { unit, reason: estimate.reason };
    const score = (estimate.value - centre) / Math.hypot(unitSd, estimate.sd);
    const far = Math.abs(score);
    const outside = far > Z998 ? '99.8' : far > Z95 ? '95' : 'none';
    return { unit, ...estimate, score, outside, reason: null };
  });
  return { centre, unitSd, units };
}

/** Limits centre +/- 1.96 and 3.09 x sqrt(unit spread squared + sd squared) at each sd. */
export function funnelLimits(
  { centre, unitSd }: Pick<Funnel, 'centre' | 'unitSd'>,
  sds: readonly number[],
): readonly FunnelLimits[] {
  return sds.map((sd) => {
    const expected = Math.hypot(unitSd, sd);
    return {
      sd,
      lower95: centre - Z95 * expected,
      upper95: centre + Z95 * expected,
      lower998: centre - Z998 * expected,
      upper998: centre + Z998 * expected,
    };
  });
}
