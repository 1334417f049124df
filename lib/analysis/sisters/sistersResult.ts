import type { ChartedSeries } from '../drift/types';
import type { Analysis } from '../openAnalysis';
import { factorDifferences } from './factorDifferences';
import { sisterGroups } from './sisterGroups';
import type { SistersResult } from './types';

/**
 * Everything that the Sisters page shows, for one way of putting units together.
 *
 * @param charted forecast residuals of the fleet, from which workshops are compared
 */
export function sistersResult(
  { fleet, fits, units, groupBy }: Analysis,
  charted: readonly ChartedSeries[],
): SistersResult {
  const groups = sisterGroups(fits.values());
  const { asOf, source } = fleet;
  return { asOf, source, groupBy, groups, differences: factorDifferences(units, groups, charted) };
}
