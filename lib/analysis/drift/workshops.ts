import { group } from 'd3-array';
import { processPerformance } from '../../stats/charts/processPerformance';
import type { AssemblyRange } from '../../store/questions';
import type { UnitNow } from '../unitNow';
import type { ChartedSeries, Workshop, WorkshopFrame } from './types';

/** Why there is no capability. */
const noRange = 'limits.csv gives no assembly range for this frame and series';
const tooFew = 'a capability needs 5 readings as left at 0 run hours that vary';

/**
 * What each workshop leaves behind in one series: forecast residuals of readings as left in order of date, and by frame the
 * capability against the assembly range, of readings at 0 run hours: what runs on is left worn. Readings of workshops that are not named are left out.
 */
export function workshopsAsLeft(
  charted: readonly ChartedSeries[],
  series: string,
  units: ReadonlyMap<string, UnitNow>,
  ranges: readonly AssemblyRange[],
): readonly Workshop[] {
  const asLeft = charted
    .filter((one) => one.series === series)
    .flatMap(({ unit, readings }) =>
      readings
        .filter(({ stage }) => stage === 'left')
        .map((reading) => ({ ...reading, unit, frame: units.get(unit)?.row.frame ?? '' })),
    );
  const named = asLeft.flatMap((reading) =>
    reading.workshop === null ? [] : [{ ...reading, workshop: reading.workshop }],
  );
  return [...group(named, ({ workshop }) => workshop)]
    .map(([workshop, readings]) => {
      const frames = [...group(readings, ({ frame }) => frame)].map(
        ([frame, own]): WorkshopFrame =>
          capability(
            frame,
            own.filter(({ runHours }) => runHours === 0).map(({ value_mm }) => value_mm),
            ranges.find((range) => range.frame === frame && range.series === series),
          ),
      );
      return {
        workshop,
        readings: readings.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
        frames: frames.sort((a, b) => (a.frame < b.frame ? -1 : 1)),
      };
    })
    .sort((a, b) => (a.workshop < b.workshop ? -1 : 1));
}

function capability(
  frame: string,
  values: readonly number[],
  range: AssemblyRange | undefined,
): WorkshopFrame {
  const [lower, upper] = [range?.assembly_lower ?? null, range?.assembly_upper ?? null];
  const common = { frame, readings: values.length, lower_mm: lower, upper_mm: upper };
  if (lower === null && upper === null) return { ...common, performance: null, reason: noRange };
  const performance = processPerformance(values, { lower, upper });
  return { ...common, performance, reason: performance === null ? tooFew : null };
}
