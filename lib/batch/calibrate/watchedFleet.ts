import type { ChartedReading, ChartedSeries } from '../../analysis/drift/types';
import { forecastResiduals } from '../../stats/residuals/forecastResiduals';
import { integrateWear } from '../../stats/wear/integrateWear';
import { noForecastReason } from '../../stats/wear/noForecastReason';
import type { WearReading } from '../../stats/wear/types';
import { wearStatistics } from '../../stats/wear/wearStatistics';
import { seededDraws } from './seededDraws';

/** A fleet to be watched: one series, a new run at every overhaul, as of runout. */
export interface WatchedFleet {
  readonly units: number;
  readonly years: number;
  /** Unit whose readings rise, by this many noise standard deviations at each overhaul from `from` on. */
  readonly drift: { readonly unit: number; readonly from: number; readonly perOverhaul_sd: number } | null;
}

/** Truth of the watched series; mm, slopes mm per 10,000 h. */
const truth = {
  start: 0.02,
  slope: 0.002,
  noise: 0.003,
  startUnit: 0.003,
  startRun: 0.002,
  slopeUnit: 0.001,
  slopeRun: 0.001,
};
const resolution_mm = 0.001;

interface Reading extends WearReading {
  readonly overhaul: number;
  readonly stage: ChartedReading['stage'];
  readonly day: number;
}

/**
 * Forecast residuals of a made-up fleet: as left at the start, then as found and as left at overhauls 1.2 to 2.4 years apart.
 *
 * Readings are rounded to 0.001 mm. A drifting unit's rise shows as found and persists as left.
 */
export function watchedFleet({ units, years, drift }: WatchedFleet, seed: number): readonly ChartedSeries[] {
  const { uniform, normal } = seededDraws(seed);
  const readings: Reading[] = [];
  for (let unit = 0; unit < units; unit++) {
    const own = { start: truth.startUnit * normal(), slope: truth.slopeUnit * normal() };
    let [day, overhaul] = [365.25 * uniform(), 0];
    while (day < 365.25 * years) {
      const run = {
        start: truth.start + own.start + truth.startRun * normal(),
        slope: truth.slope + own.slope + truth.slopeRun * normal(),
      };
      const days = 365.25 * (1.2 + 1.2 * uniform());
      const x = (days / 365.25) * 0.65;
      const rise = (at: number) =>
        drift === null || drift.unit !== unit
          ? 0
          : Math.max(0, at - drift.from + 1) * drift.perOverhaul_sd * truth.noise;
      const take = (stage: Reading['stage'], at: number, xAt: number, when: number) => {
        const y = run.start + run.slope * xAt + rise(at) + truth.noise * normal();
        readings.push({
          unit: `U${unit}`,
          run: `U${unit} run ${overhaul}`,
          x: xAt,
          y: Math.round(y / resolution_mm) * resolution_mm,
          overhaul: at,
          stage,
          day: when,
        });
      };
      take('left', overhaul, 0, day);
      day += days;
      if (day < 365.25 * years) take('found', overhaul + 1, x, day);
      overhaul++;
    }
  }
  return charted(readings);
}

function charted(readings: readonly Reading[]): readonly ChartedSeries[] {
  const statistics = wearStatistics(readings);
  const reason = noForecastReason(statistics);
  if (reason !== null) throw new Error(`watchedFleet requires a fleet that can be fitted: ${reason}`);
  const residuals = forecastResiduals(integrateWear(statistics), statistics, readings);
  const byUnit = new Map<string, ChartedReading[]>();
  readings.forEach((reading, index) => {
    const own = byUnit.get(reading.unit) ?? [];
    byUnit.set(reading.unit, own);
    own.push({
      overhaul: `${reading.unit}-${reading.overhaul}`,
      date: new Date(reading.day * 86_400_000).toISOString().slice(0, 10),
      stage: reading.stage,
      unitHours: 0,
      runHours: reading.x * 10_000,
      workshop: null,
      value_mm: reading.y,
      foretold_mm: residuals[index]?.foretold_mm ?? null,
      z: residuals[index]?.z ?? null,
    });
  });
  return [...byUnit].map(([unit, own]) => ({
    unit,
    group: 'made up',
    series: 'runout',
    sides: 'upper',
    readings: own,
  }));
}
