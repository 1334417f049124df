import type { BandPoint, UnitSeries } from '../../lib/analysis/types';
import { bandAt } from '../../lib/charts/bandAt';
import { formatHours, formatLength, formatMm } from '../../lib/charts/format';
import type { PlotPlace } from '../../lib/charts/placeInPlot';

function bandWords(name: string, band: readonly BandPoint[], unitHours: number): string | null {
  const at = bandAt(band, unitHours);
  return at === null
    ? null
    : `${name} ${formatMm(at.median_mm)} (80 %: ${formatLength(at.lower_mm)} to ${formatLength(at.upper_mm)})`;
}

/** What the picture of a series holds at the place pointed at: its hours and mm, and what band and own line say at these hours. */
export function seriesPlaceWords(series: UnitSeries, { x, y }: PlotPlace): string {
  const here = [
    bandWords('sister-informed', series.sisterBand, x),
    bandWords('own line', series.ownLine, x),
  ].filter((words) => words !== null);
  return [`${formatHours(x)} on the unit, ${formatMm(y)}`, ...here].join('; ');
}
