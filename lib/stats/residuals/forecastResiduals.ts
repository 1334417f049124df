import { levelAt } from '../wear/forecast';
import type { WearPosterior, WearReading, WearStatistics } from '../wear/types';
import { foretellingGroup, foretoldOfUnit } from './foretold';
import { readingScore } from './readingScore';

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
  const occasionOf = new Map(readings.map((reading, k) => [reading, occasions?.[k]]));
  const group = foretellingGroup(posterior, statistics, readings);
  const residuals = new Map<WearReading, ForecastResidual>();
  for (const own of group.readingsOf.values()) {
    const earlierThan = (index: number) => {
      const occasion = occasionOf.get(own[index] as WearReading);
      if (occasion === undefined) return index;
      return own.findIndex((reading) => occasionOf.get(reading) === occasion);
    };
    foretoldOfUnit(group, own, earlierThan).forEach((foretold, k) => {
      const reading = own[k] as WearReading;
      if ('reason' in foretold) {
        const { reason } = foretold;
        residuals.set(reading, { reading, z: null, below: null, foretold_mm: null, reason });
        return;
      }
      const { z, below } = readingScore(foretold.line, reading.x, reading.y, reading.weight);
      const foretold_mm = levelAt(foretold.line, reading.x).mean;
      residuals.set(reading, { reading, z, below, foretold_mm, reason: null });
    });
  }
  return readings.map((reading) => residuals.get(reading) as ForecastResidual);
}
