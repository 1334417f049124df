import { group } from 'd3-array';
import { type ForetellingGroup, foretellingGroup, foretoldOfUnit } from '../../stats/residuals/foretold';
import { readingScore } from '../../stats/residuals/readingScore';
import type { WearPosterior, WearReading, WearStatistics } from '../../stats/wear/types';

/**
 * Scores of one unit's readings, each foretold from what was known before its own overhaul: so those as found and as left
 * compare with each other, see risePattern.
 *
 * @param readings those of the statistics, each unit's in the order in which they were taken
 * @param overhauls name of each reading's overhaul
 * Returns a function of the unit: z of its readings in their order, null where nothing could be foretold. What all units
 * share is made when the first is asked for, and a unit's scores are kept.
 */
export function scoresBeforeOverhauls(
  posterior: WearPosterior,
  statistics: WearStatistics,
  readings: readonly WearReading[],
  overhauls: readonly string[],
): (unit: string) => readonly (number | null)[] {
  const overhaulsOf = group(
    readings.map(({ unit }, index) => ({ unit, overhaul: overhauls[index] })),
    ({ unit }) => unit,
  );
  let foretelling: ForetellingGroup | null = null;
  const scored = new Map<string, readonly (number | null)[]>();
  return (unit) => {
    const known = scored.get(unit);
    if (known !== undefined) return known;
    foretelling ??= foretellingGroup(posterior, statistics, readings);
    const own = foretelling.readingsOf.get(unit) ?? [];
    const ownOverhauls = (overhaulsOf.get(unit) ?? []).map(({ overhaul }) => overhaul);
    const earlierThan = (index: number) => ownOverhauls.indexOf(ownOverhauls[index]);
    const scores = foretoldOfUnit(foretelling, own, earlierThan).map((foretold, index) => {
      const { x, y, weight } = own[index] as WearReading;
      return 'reason' in foretold ? null : readingScore(foretold.line, x, y, weight).z;
    });
    scored.set(unit, scores);
    return scores;
  };
}
