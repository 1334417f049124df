import { groupKey } from '../groupFits';
import type { Analysis, OnProgress } from '../openAnalysis';
import { scoresBeforeOverhauls } from './beforeOverhauls';
import { type OverhaulColumns, type ScoredGroup, scoredFleet } from './scoredFleet';
import type { ChartedReading, ChartedSeries, UnchartedSeries } from './types';

/** Forecast residuals of the whole fleet, and the series without any. */
export interface ChartedFleet {
  readonly charted: readonly ChartedSeries[];
  readonly uncharted: readonly UnchartedSeries[];
  /** A charted series' readings with their z foretold from before each overhaul; without it no pattern can be told. */
  readonly beforeOverhauls?: (series: ChartedSeries) => readonly ChartedReading[];
}

/** Forecast residuals of every reading of every unit and series, as pages chart them. */
export async function chartedSeries(analysis: Analysis, onProgress: OnProgress): Promise<ChartedFleet> {
  const { groups, uncharted, overhauls } = await scoredFleet(analysis, onProgress);
  const charted: ChartedSeries[] = [];
  const scoresBefore = new Map<string, (unit: string) => Float64Array>();
  for (const group of groups) {
    const { fit, taken, openings } = group;
    const before = scoresBeforeOverhauls(fit.posterior, fit.statistics, taken, openings);
    scoresBefore.set(groupKey(group.group, group.series), before);
    for (let unit = 0; unit < fit.statistics.unitNames.length; unit++)
      charted.push(chartedUnit(group, unit, overhauls));
  }
  const beforeOverhauls = (series: ChartedSeries) => {
    const scores = scoresBefore.get(groupKey(series.group, series.series))?.(series.unit) ?? [];
    return series.readings.map((reading, index) => ({ ...reading, z: orNull(scores[index]) }));
  };
  return { charted, uncharted, beforeOverhauls };
}

/** One unit's readings of a group's series, by its place among the statistics' units. */
export function chartedUnit(
  { group, series, sides, fit, taken, openings, isLeft, foretold }: ScoredGroup,
  unit: number,
  overhauls: OverhaulColumns,
): ChartedSeries {
  const readings: ChartedReading[] = [];
  const end = taken.firstReading[unit + 1] as number;
  for (let at = taken.firstReading[unit] as number; at < end; at++) {
    const opening = openings[at] as number;
    readings.push({
      overhaul: overhauls.overhaul[opening] as string,
      date: overhauls.date[opening] as string,
      stage: isLeft[at] === 1 ? 'left' : 'found',
      unitHours: overhauls.unit_hours[opening] as number,
      runHours: (taken.x[at] as number) * 10_000,
      workshop: overhauls.workshop[opening] || null,
      value_mm: taken.y[at] as number,
      foretold_mm: orNull(foretold.foretold_mm[at]),
      z: orNull(foretold.z[at]),
    });
  }
  return { unit: fit.statistics.unitNames[unit] as string, group, series, sides, readings };
}

function orNull(value: number | undefined): number | null {
  return value === undefined || Number.isNaN(value) ? null : value;
}
