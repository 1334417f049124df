import { cusumChart } from '../../stats/charts/cusumChart';
import { ewmaChart } from '../../stats/charts/ewmaChart';
import { individualsChart } from '../../stats/charts/individualsChart';
import type { ChartedReading, ChartedSeries, ChartName, ThresholdInForce, UnitCharts } from './types';

/**
 * The charts of one unit's series: forecast residuals against the thresholds in force, and readings of one stage in mm with
 * limits by their moving range.
 *
 * @param stage readings of the moving-range chart
 * @param baseline how many of them its limits come from; the usual number if null
 */
export function unitCharts(
  series: ChartedSeries,
  thresholds: readonly ThresholdInForce[],
  stage: ChartedReading['stage'],
  baseline: number | null,
): UnitCharts {
  const { sides } = series;
  const known = series.readings.filter((reading) => reading.z !== null);
  const z = known.map((reading) => reading.z as number);
  const thresholdOf = (chart: ChartName) =>
    thresholds.find((one) => one.chart === chart && one.sides === sides)?.threshold ?? null;
  const [individuals, ewma, cusum] = [thresholdOf('individuals'), thresholdOf('ewma'), thresholdOf('cusum')];
  const sums = cusum === null ? null : cusumChart(z, cusum, sides);
  const own = series.readings.filter((reading) => reading.stage === stage);
  return {
    series,
    known,
    individuals,
    ewma: ewma === null ? null : ewmaChart(z, ewma, sides).points,
    cusum:
      sums === null || cusum === null ? null : { threshold: cusum, upper: sums.upper, lower: sums.lower },
    movingRange: {
      stage,
      readings: own,
      chart: individualsChart(
        own.map(({ value_mm }) => value_mm),
        sides,
        ...(baseline === null ? [] : [baseline]),
      ),
    },
  };
}
