import { group } from 'd3-array';
import { z } from 'zod';
import type { ChartSides } from '../../stats/charts/ChartKind';
import { forecastResiduals } from '../../stats/residuals/forecastResiduals';
import { queryRows } from '../../store/queryRows';
import { readingsInOrderSql } from '../../store/sql/readingsInOrder';
import { groupKey, runName } from '../groupFits';
import type { Analysis, OnProgress } from '../openAnalysis';
import { scoresBeforeOverhauls } from './beforeOverhauls';
import type { ChartedReading, ChartedSeries, UnchartedSeries } from './types';

const readingRow = z.object({
  group: z.string(),
  series: z.string(),
  unit: z.string(),
  run: z.number(),
  x: z.number(),
  y: z.number(),
  weight: z.number(),
  overhaul: z.string(),
  date: z.string(),
  stage: z.enum(['found', 'left']),
  unit_hours: z.number(),
  workshop: z.string().nullable(),
});
type ReadingRow = z.output<typeof readingRow>;

/** Forecast residuals of the whole fleet, and the series without any. */
export interface ChartedFleet {
  readonly charted: readonly ChartedSeries[];
  readonly uncharted: readonly UnchartedSeries[];
  /** A charted series' readings with their z foretold from before each overhaul; without it no pattern can be told. */
  readonly beforeOverhauls?: (series: ChartedSeries) => readonly ChartedReading[];
}

/** A size that cannot be negative, such as runout, is looked at on its upper side only. */
function sidesOf(series: string): ChartSides {
  return series === 'runout' || series.endsWith('_offset') ? 'upper' : 'both';
}

/** Forecast residuals of every reading of every unit and series. */
export async function chartedSeries(analysis: Analysis, onProgress: OnProgress): Promise<ChartedFleet> {
  const { connector, fleet, fits, groupTable } = analysis;
  const rows = await queryRows(connector, readingsInOrderSql(groupTable), readingRow, [fleet.asOf]);
  const groups = group(rows, (row) => groupKey(row.group, row.series));
  const charted: ChartedSeries[] = [];
  const uncharted: UnchartedSeries[] = [];
  const scoresBefore = new Map<string, (unit: string) => readonly (number | null)[]>();
  let done = 0;
  for (const [key, readings] of groups) {
    const fit = fits.get(key);
    const { group: name, series } = readings[0] as ReadingRow;
    if (fit === undefined || fit.posterior === null) {
      uncharted.push({ group: name, series, reason: fit?.row.reason ?? 'the sister group has no fit' });
      continue;
    }
    const words = `${name}, ${series.replaceAll('_', ' ')}`;
    await onProgress({ step: `Comparing readings with forecasts of ${words}`, share: done++ / groups.size });
    const known = readings.map(({ unit, run, x, y, weight }) => ({
      unit,
      run: runName(unit, run),
      x,
      y,
      weight,
    }));
    const residuals = forecastResiduals(fit.posterior, fit.statistics, known);
    const overhauls = readings.map(({ overhaul }) => overhaul);
    scoresBefore.set(key, scoresBeforeOverhauls(fit.posterior, fit.statistics, known, overhauls));
    const withZ = readings.map((row, index) => ({
      row,
      z: residuals[index]?.z ?? null,
      foretold_mm: residuals[index]?.foretold_mm ?? null,
    }));
    for (const [unit, own] of group(withZ, ({ row }) => row.unit))
      charted.push({
        unit,
        group: name,
        series,
        sides: sidesOf(series),
        readings: own.map(({ row, z: score, foretold_mm }) => ({
          overhaul: row.overhaul,
          date: row.date,
          stage: row.stage,
          unitHours: row.unit_hours,
          runHours: row.x * 10_000,
          workshop: row.workshop,
          value_mm: row.y,
          foretold_mm,
          z: score,
        })),
      });
  }
  const beforeOverhauls = ({ unit, group: name, series, readings }: ChartedSeries) => {
    const scores = scoresBefore.get(groupKey(name, series))?.(unit) ?? [];
    return readings.map((reading, index) => ({ ...reading, z: scores[index] ?? null }));
  };
  return { charted, uncharted, beforeOverhauls };
}
