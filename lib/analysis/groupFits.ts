import type { WearFit, WearPosterior, WearStatistics } from '../stats/wear/types';
import type { Connector } from '../store/Connector';
import { queryRows } from '../store/queryRows';
import { createNoiseVariancesSql } from '../store/sql/noiseVariances';
import type { FittedGroup, GroupWork } from './groupWork';
import type { RunStatements } from './RunSource';
import type { FitRow } from './types';
import { type SeriesOfRuns, seriesOfRuns, weighedStatistics } from './weighedStatistics';

/** A sister group's series with everything that its forecasts are made from. */
export interface GroupFit {
  readonly row: FitRow;
  /** Runs are named by their number. */
  readonly statistics: WearStatistics;
  readonly posterior: WearPosterior | null;
  readonly fit: WearFit | null;
  readonly unitIndex: ReadonlyMap<string, number>;
}

/** Name of a run: its unit and its number, 0 for the one from new. */
export function runName(unit: string, run: number): string {
  return `${unit} run ${run}`;
}

/** Key of a group's series. */
export function groupKey(group: string, series: string): string {
  return `${group}\u0000${series}`;
}

/** Where a run stands in its group's statistics, or null if it has no reading there. */
export function runIndexOf({ statistics, unitIndex }: GroupFit, unit: string, run: number): number | null {
  const index = unitIndex.get(unit);
  if (index === undefined) return null;
  const name = String(run);
  const end = statistics.firstRun[index + 1] as number;
  for (let place = statistics.firstRun[index] as number; place < end; place++) {
    if (statistics.runNames[place] === name) return place;
  }
  return null;
}

/**
 * Fits the wear model to every sister group and series on the day.
 *
 * Interval readings are weighted by the group's own noise: such groups are fitted twice, first with a noise of 0.01 mm.
 *
 * @param groupTable table of the sister group of each unit: unit, group
 * @param runs statements that make the statistics of the runs
 * @param work where the fits are computed
 * @param onGroup called before each fit with its name and the share done
 */
export async function groupFits(
  connector: Connector,
  groupTable: string,
  runs: RunStatements,
  work: GroupWork,
  onGroup: (name: string, share: number) => Promise<void>,
): Promise<ReadonlyMap<string, GroupFit>> {
  await connector.run(createNoiseVariancesSql(groupTable));
  const all = await queryRows(connector, runs.seriesSql, seriesOfRuns);
  const statisticsOf = (one: SeriesOfRuns | undefined) => {
    const asked = one === undefined ? [] : weighedStatistics(connector, groupTable, runs, one);
    // Where the fits before it are stopped nobody waits for it.
    const found = Promise.resolve(asked);
    found.catch(() => {});
    return found;
  };
  const fits: GroupFit[] = [];
  let next = statisticsOf(all[0]);
  for (const [place, { series }] of all.entries()) {
    const groups = await next;
    // The database reads on while the fits are computed.
    next = statisticsOf(all[place + 1]);
    const name = series.replaceAll('_', ' ');
    const fitted = await work.fits(
      groups.map(({ statistics }) => statistics),
      (index) => onGroup(`${groups[index]?.group}, ${name}`, (place + index / groups.length) / all.length),
    );
    for (const [index, { group, statistics }] of groups.entries())
      fits.push(groupFit(group, series, statistics, fitted[index] as FittedGroup));
  }
  // Within a group in the order of series, which the sort leaves as it is.
  fits.sort((one, other) => order(one.row.group, other.row.group));
  return new Map(fits.map((fit) => [groupKey(fit.row.group, fit.row.series), fit]));
}

function order(one: string, other: string): number {
  return one < other ? -1 : Number(one > other);
}

function groupFit(
  group: string,
  series: string,
  statistics: WearStatistics,
  { fit, posterior, reason }: FittedGroup,
): GroupFit {
  const row: FitRow = {
    group,
    series,
    runs: statistics.runNames.length,
    units: statistics.unitNames.length,
    readings: statistics.readings,
    intercept_mm: fit?.intercept_mm ?? null,
    slope_mm_per_10kh: fit?.slope_mm_per_10kh ?? null,
    sdNoise_mm: fit?.sdNoise_mm ?? null,
    sdStart_mm: fit === null ? null : Math.hypot(fit.sdStartUnit_mm, fit.sdStartRun_mm),
    sdSlopeUnit_mm_per_10kh: fit?.sdSlopeUnit_mm_per_10kh ?? null,
    sdSlopeRun_mm_per_10kh: fit?.sdSlopeRun_mm_per_10kh ?? null,
    remlCriterion: fit?.remlCriterion ?? null,
    boundary: fit?.boundary ?? [],
    converged: fit?.converged ?? false,
    observedRunHours: statistics.maxX.reduce((most, x) => Math.max(most, x), 0) * 10_000,
    reason,
  };
  const unitIndex = new Map(statistics.unitNames.map((name, index) => [name, index]));
  return { row, statistics, posterior, fit, unitIndex };
}
