import { fitWear } from '../stats/wear/fitWear';
import { integrateWear } from '../stats/wear/integrateWear';
import { noForecastReason } from '../stats/wear/noForecastReason';
import type { WearFit, WearPosterior, WearStatistics } from '../stats/wear/types';

/** The wear model of one group and series: data only, so that another thread can hand it over. */
export interface FittedGroup {
  readonly fit: WearFit | null;
  readonly posterior: WearPosterior | null;
  /** Why there is no fit, if there is none. */
  readonly reason: string | null;
}

/** Fits groups, in their order; `onGroup` is told before each begins and throws to stop. */
export type FitGroups = (
  groups: readonly WearStatistics[],
  onGroup: (place: number) => Promise<void>,
) => Promise<readonly FittedGroup[]>;

/** Fits one group: the same numbers on whichever thread. */
export function fitGroup(statistics: WearStatistics): FittedGroup {
  const reason = noForecastReason(statistics);
  return reason === null
    ? { fit: fitWear(statistics), posterior: integrateWear(statistics), reason }
    : { fit: null, posterior: null, reason };
}

/** Fits groups one after another where the analysis runs. */
export const fitHere: FitGroups = async (groups, onGroup) => {
  const fitted: FittedGroup[] = [];
  for (const [place, statistics] of groups.entries()) {
    await onGroup(place);
    fitted.push(fitGroup(statistics));
  }
  return fitted;
};
