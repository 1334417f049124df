import { foretellingGroup, foretellUnit, nothingForetold } from '../../stats/residuals/foretold';
import type { TakenReadings } from '../../stats/residuals/TakenReadings';
import type { WearPosterior, WearStatistics } from '../../stats/wear/types';

/**
 * Scores of one unit's readings, each foretold from what was known before its own overhaul: so those as found and as left
 * compare with each other, see risePattern.
 *
 * @param taken the readings of the statistics
 * @param openings place of each reading's overhaul; the readings of an overhaul follow each other
 * Returns a function of the unit: z of its readings in their order, NaN where nothing could be foretold. What all units
 * share is made when the first is asked for, and a unit's scores are kept.
 */
export function scoresBeforeOverhauls(
  posterior: WearPosterior,
  statistics: WearStatistics,
  taken: TakenReadings,
  openings: Int32Array,
): (unit: string) => Float64Array {
  let group: ReturnType<typeof foretellingGroup> | null = null;
  const scored = new Map<string, Float64Array>();
  return (unit) => {
    const known = scored.get(unit);
    if (known !== undefined) return known;
    const index = statistics.unitNames.indexOf(unit);
    if (index < 0) return new Float64Array(0);
    group ??= foretellingGroup(posterior, statistics, taken);
    const [first, end] = [taken.firstReading[index], taken.firstReading[index + 1]] as [number, number];
    const own = openings.subarray(first, end);
    const foretold = nothingForetold(own.length);
    foretellUnit(group, index, foretold, 0, (reading) => own.indexOf(own[reading] as number));
    scored.set(unit, foretold.z);
    return foretold.z;
  };
}
