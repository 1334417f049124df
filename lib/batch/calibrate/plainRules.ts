import studentCdf from '@stdlib/stats-base-dists-t-cdf';
import type { ChartedReading, ChartedSeries } from '../../analysis/drift/types';

/** A rule's score of each reading as found of every unit: the larger, the more it speaks of a rise. */
export type Rule = (
  charted: readonly ChartedSeries[],
) => ReadonlyMap<string, readonly { readonly overhaul: string; readonly score: number }[]>;

function asFound(series: ChartedSeries): readonly ChartedReading[] {
  return series.readings.filter(({ stage }) => stage === 'found');
}

/** Standard deviations above the mean of all readings as found of the fleet: the plain rule sets its limit at 2. */
export const spreadRule: Rule = (charted) => {
  const values = charted.flatMap((series) => asFound(series).map(({ value_mm }) => value_mm));
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const sd = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  return new Map(
    charted.map((series) => [
      series.unit,
      asFound(series).map(({ overhaul, value_mm }) => ({ overhaul, score: (value_mm - mean) / sd })),
    ]),
  );
};

/** -log10 of the one-sided p of an ordinary least squares slope over the dates of a unit's readings as found up to each. */
export const trendRule: Rule = (charted) =>
  new Map(
    charted.map((series) => {
      const found = asFound(series);
      return [
        series.unit,
        found.map(({ overhaul }, index) => ({
          overhaul,
          score: -Math.log10(slopeP(found.slice(0, index + 1))),
        })),
      ];
    }),
  );

function slopeP(readings: readonly ChartedReading[]): number {
  const n = readings.length;
  if (n < 3) return 1;
  const days = readings.map(({ date }) => Date.parse(date) / 86_400_000);
  const meanDay = days.reduce((sum, day) => sum + day, 0) / n;
  const mean = readings.reduce((sum, { value_mm }) => sum + value_mm, 0) / n;
  let [sxx, sxy, syy] = [0, 0, 0];
  readings.forEach(({ value_mm }, index) => {
    const [dx, dy] = [(days[index] as number) - meanDay, value_mm - mean];
    sxx += dx * dx;
    sxy += dx * dy;
    syy += dy * dy;
  });
  const residual = (syy - (sxy * sxy) / sxx) / (n - 2);
  if (!(residual > 0)) return sxy > 0 ? 1e-12 : 1;
  return Math.max(1e-12, studentCdf(-(sxy / sxx) / Math.sqrt(residual / sxx), n - 2));
}
