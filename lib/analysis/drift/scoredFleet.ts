import type { ChartSides } from '../../stats/charts/ChartKind';
import {
  type Foretold,
  foretellingGroup,
  foretellUnit,
  nothingForetold,
} from '../../stats/residuals/foretold';
import type { TakenReadings } from '../../stats/residuals/TakenReadings';
import type { WearPosterior } from '../../stats/wear/types';
import type { Columns } from '../../store/queryColumns';
import { queryColumns } from '../../store/queryColumns';
import { overhaulsInOrderSql, readingsInOrderSql, seriesInOrderSql } from '../../store/sql/readingsInOrder';
import { type GroupFit, groupKey } from '../groupFits';
import type { Analysis, OnProgress } from '../openAnalysis';
import { takenStretch } from './takenStretch';
import type { UnchartedSeries } from './types';

const overhaulKinds = {
  group: 'text',
  unit: 'text',
  overhaul: 'text',
  date: 'text',
  unit_hours: 'number',
  workshop: 'text',
} as const;
const readingKinds = {
  series: 'number',
  place: 'number',
  run: 'number',
  x: 'number',
  y: 'number',
  weight: 'number',
  is_left: 'number',
} as const;

/** All overhauls by their place. */
export type OverhaulColumns = Columns<typeof overhaulKinds>;

/** A sister group's series with the forecast residuals of its readings, column by column. */
export interface ScoredGroup {
  readonly group: string;
  readonly series: string;
  readonly sides: ChartSides;
  readonly fit: GroupFit & { readonly posterior: WearPosterior };
  readonly taken: TakenReadings;
  /** Place of every reading's overhaul. */
  readonly openings: Int32Array;
  /** 1 for a reading as left. */
  readonly isLeft: Uint8Array;
  readonly foretold: Foretold;
}

/** Forecast residuals of the whole fleet, and the series without any. */
export interface ScoredFleet {
  readonly groups: readonly ScoredGroup[];
  readonly uncharted: readonly UnchartedSeries[];
  readonly overhauls: OverhaulColumns;
}

/** A size that cannot be negative, such as runout, is looked at on its upper side only. */
function sidesOf(series: string): ChartSides {
  return series === 'runout' || series.endsWith('_offset') ? 'upper' : 'both';
}

/** Forecast residuals of every reading of every unit and series. No reading is an object: a fleet has millions of them. */
export async function scoredFleet(
  { connector, fleet, fits, groupTable }: Analysis,
  onProgress: OnProgress,
): Promise<ScoredFleet> {
  const overhauls = await queryColumns(connector, overhaulsInOrderSql(groupTable), overhaulKinds);
  const readings = await queryColumns(connector, readingsInOrderSql(groupTable), readingKinds, [fleet.asOf]);
  const names = await queryColumns(connector, seriesInOrderSql, { series: 'text' });
  const groups: ScoredGroup[] = [];
  const uncharted: UnchartedSeries[] = [];
  const all = readings.series.length;
  const groupOf = (reading: number) => overhauls.group[readings.place[reading] as number] as string;
  for (let start = 0, end = 0; start < all; start = end) {
    const [group, place] = [groupOf(start), readings.series[start] as number];
    while (end < all && readings.series[end] === place && groupOf(end) === group) end++;
    const series = names.series[place] as string;
    const fit = fits.get(groupKey(group, series));
    if (fit === undefined || fit.posterior === null) {
      uncharted.push({ group, series, reason: fit?.row.reason ?? 'the sister group has no fit' });
      continue;
    }
    const words = `${group}, ${series.replaceAll('_', ' ')}`;
    await onProgress({ step: `Comparing readings with forecasts of ${words}`, share: start / all });
    const openings = Int32Array.from(readings.place.subarray(start, end));
    const taken = takenStretch(
      fit.statistics,
      readings,
      start,
      end,
      (reading) => overhauls.unit[openings[reading] as number] as string,
    );
    groups.push({
      group,
      series,
      sides: sidesOf(series),
      fit: { ...fit, posterior: fit.posterior },
      taken,
      openings,
      isLeft: Uint8Array.from(readings.is_left.subarray(start, end)),
      foretold: foretoldOf(fit.posterior, fit, taken),
    });
  }
  return { groups, uncharted, overhauls };
}

function foretoldOf(posterior: WearPosterior, { statistics }: GroupFit, taken: TakenReadings): Foretold {
  const group = foretellingGroup(posterior, statistics, taken);
  const foretold = nothingForetold(taken.x.length);
  for (let unit = 0; unit < statistics.unitNames.length; unit++)
    foretellUnit(group, unit, foretold, taken.firstReading[unit] as number);
  return foretold;
}
