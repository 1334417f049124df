import { fitCheckSentences, fitChecks } from '../stats/wear/fitChecks';
import { groupKey } from './groupFits';
import { groupReadings } from './groupStatistics';
import type { Analysis } from './openAnalysis';

/**
 * What the readings say against a group's fit, in sentences; none where there is no fit. Not part of every fit, since only they need
 * the readings themselves.
 */
export async function fitChecksOf(
  { connector, fits, fleet, groupTable }: Analysis,
  group: string,
  series: string,
): Promise<readonly string[]> {
  const found = fits.get(groupKey(group, series));
  if (!found?.fit || !found.posterior) return [];
  const readings = await groupReadings(connector, groupTable, fleet.asOf, group, series);
  return fitCheckSentences(fitChecks(found.statistics, found.fit, found.posterior, readings));
}
