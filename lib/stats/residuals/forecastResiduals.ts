import type { WearPosterior, WearReading, WearStatistics } from '../wear/types';
import { foretellingGroup, foretellUnit, nothingForetold } from './foretold';
import { takenReadings } from './TakenReadings';

/** One reading against what was foretold for it; z null where nothing could be foretold. */
export interface ForecastResidual {
  readonly reading: WearReading;
  readonly z: number | null;
  /** Probability below the reading. */
  readonly below: number | null;
  /** Level foretold for the reading's run at its hours, mm, without the reading's noise. */
  readonly foretold_mm: number | null;
  /** Why nothing was foretold. */
  readonly reason: string | null;
}

/**
 * Forecast residuals of a sister group's series: for every reading the probability below it given the unit's
 * earlier readings and all readings of all other units; z is the normal quantile of that probability.
 *
 * Under the model the z of one unit are independent standard normal, whatever had to be estimated. A unit's sums
 * are taken out of the group's and those of its earlier readings put back, so that the cost is readings x nodes.
 * Nothing is foretold where the readings known by then would not carry a forecast, see noForecastReason.
 *
 * @param readings those of the statistics, each unit's in the order in which they were taken
 * @param occasions name of each reading's occasion, such as its overhaul, if all readings of one occasion are to be
 * foretold from what was known before it: their z are then not independent, but compare with each other, as as-found
 * and as-left ones must in risePattern
 * Throws if they are not those of the statistics.
 */
export function forecastResiduals(
  posterior: WearPosterior,
  statistics: WearStatistics,
  readings: readonly WearReading[],
  occasions: readonly string[] | null = null,
): readonly ForecastResidual[] {
  if (readings.length !== statistics.readings) {
    throw new Error(
      `forecastResiduals requires the ${statistics.readings} readings of its statistics, got ${readings.length}`,
    );
  }
  if (occasions !== null && occasions.length !== readings.length) {
    throw new Error(
      `forecastResiduals requires an occasion for each of ${readings.length} readings, got ${occasions.length}`,
    );
  }
  const { taken, places } = takenReadings(statistics, readings);
  const group = foretellingGroup(posterior, statistics, taken);
  const foretold = nothingForetold(readings.length);
  for (let unit = 0; unit < statistics.unitNames.length; unit++) {
    const first = taken.firstReading[unit] as number;
    const own = places.subarray(first, taken.firstReading[unit + 1]);
    const occasionOf = (place: number | undefined) => occasions?.[place as number];
    const earlierThan = (index: number) =>
      occasions === null ? index : own.findIndex((place) => occasionOf(place) === occasionOf(own[index]));
    foretellUnit(group, unit, foretold, first, earlierThan);
  }
  const residuals = new Map<number, ForecastResidual>();
  places.forEach((place, at) => {
    const reading = readings[place] as WearReading;
    const reason = foretold.reasons.get(at) ?? null;
    const numberAt = (column: Float64Array) => (reason === null ? (column[at] as number) : null);
    const [z, below] = [numberAt(foretold.z), numberAt(foretold.below)];
    residuals.set(place, { reading, z, below, foretold_mm: numberAt(foretold.foretold_mm), reason });
  });
  return readings.map((_, place) => residuals.get(place) as ForecastResidual);
}
