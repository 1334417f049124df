import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import { describe, expect, it } from 'vitest';
import { simulateFleet } from '../../../lib/batch/calibrate/simulateFleet';
import { forecastResiduals } from '../../../lib/stats/residuals/forecastResiduals';
import { integrateWear } from '../../../lib/stats/wear/integrateWear';
import { noForecastReason } from '../../../lib/stats/wear/noForecastReason';
import type { WearReading } from '../../../lib/stats/wear/types';
import { wearStatistics } from '../../../lib/stats/wear/wearStatistics';
import { denseFit, type Ratios } from '../wear/denseModel';

/** Angles at which each ratio is tried; even steps of the angle are the half-Cauchy prior. */
const anglesTried = 9;
const ratiosTried = Array.from({ length: anglesTried }, (_, k) =>
  Math.tan((Math.PI / 2) * ((k + 0.5) / anglesTried)),
);

function everyRatios(): readonly Ratios[] {
  const pairs = ratiosTried.flatMap((one) => ratiosTried.map((other) => [one, other] as const));
  return pairs.flatMap(([a, b]) => pairs.map(([c, d]) => [a, b, c, d] as const));
}

/**
 * Probability below a reading by a refit on the readings known alone: the whole covariance matrix of the model at every
 * combination of ratios, generalised least squares, Student's t with N - 4 degrees of freedom, weights by Bayes' theorem.
 */
function refitted(known: readonly WearReading[], reading: WearReading): number {
  const degreesOfFreedom = known.length - 4;
  const tried = everyRatios().map((ratios) => {
    const { line, residualSquares, logDeterminants } = denseFit(known, ratios);
    const { mean, covariance } = line(reading.unit, reading.run);
    const at = [1, reading.x];
    const level = at.reduce((sum, value, k) => sum + value * (mean[k] as number), 0);
    const spread = at.reduce(
      (sum, value, i) =>
        sum + at.reduce((inner, other, j) => inner + value * other * (covariance[i]?.[j] as number), 0),
      1 / (reading.weight ?? 1),
    );
    const scale = Math.sqrt((residualSquares / degreesOfFreedom) * spread);
    return {
      logWeight: -0.5 * (logDeterminants + degreesOfFreedom * Math.log(residualSquares)),
      below: studentCdf((reading.y - level) / scale, degreesOfFreedom),
    };
  });
  const most = tried.reduce(
    (largest, { logWeight }) => Math.max(largest, logWeight),
    Number.NEGATIVE_INFINITY,
  );
  const [sum, weighed] = tried.reduce(
    ([total, inside], { logWeight, below }) => {
      const weight = Math.exp(logWeight - most);
      return [total + weight, inside + weight * below];
    },
    [0, 0],
  );
  return weighed / sum;
}

const truth = { noise: 0.012, startRun: 0.015, slopeRun: 0.015, startUnit: 0.01, slopeUnit: 0.02 };

describe('forecast residuals against a refit on what was known before each reading', () => {
  it('is the same for every reading of a unit', () => {
    const { readings } = simulateFleet(9, 3, truth, false);
    const statistics = wearStatistics(readings);
    const residuals = forecastResiduals(integrateWear(statistics), statistics, readings);
    const unit = statistics.unitNames[0];
    const own = readings.filter((reading) => reading.unit === unit);
    const others = readings.filter((reading) => reading.unit !== unit);
    let compared = 0;
    for (const [k, reading] of own.entries()) {
      const known = [...others, ...own.slice(0, k)];
      const { z } = residuals[readings.indexOf(reading)] ?? {};
      if (noForecastReason(wearStatistics(known)) !== null) {
        expect(z).toBeNull();
        continue;
      }
      compared++;
      // Nodes placed for all readings serve for fewer as long as z differs by under 0.03, see foretoldOfUnit.
      expect(Math.abs((z ?? Number.NaN) - normalQuantile(refitted(known, reading), 0, 1))).toBeLessThan(0.03);
    }
    expect(compared).toBeGreaterThanOrEqual(4);
  });
});
