import { crossings } from '../../stats/wear/crossing';
import { chancePast, slopeOf } from '../../stats/wear/forecast';
import { runLevel } from '../../stats/wear/runLevel';
import type { LineMixture, WearReading } from '../../stats/wear/types';
import { intervalWeight, wearStatistics } from '../../stats/wear/wearStatistics';
import type { MarginQuestion } from '../currentLine';
import { runName } from '../groupFits';
import { furthestForecast_h } from '../marginRow';
import type { SeriesReading } from '../types';
import type { UnitNow } from '../unitNow';
import { isSameState, lineFound, lineRenewed } from './checkBasis';
import type { LineAt, OverhaulEffect, SeriesAfter, SeriesCheck, SeriesLimit } from './types';
import type { ItemBench, UnitBench } from './unitBench';

/** What an overhaul as typed did to every series of which it has a reading, and the forecast before against after. */
export function overhaulEffect(
  bench: UnitBench,
  unitHours: number | null,
  fitted: readonly string[],
  checks: readonly SeriesCheck[],
): OverhaulEffect {
  const interval_h = bench.planning?.plan.interval_h ?? null;
  const following_h = interval_h === null || unitHours === null ? null : unitHours + interval_h;
  const rows = bench.items.flatMap((item) =>
    item.bounds.flatMap(({ series, limits }) => {
      const typed = (stage: SeriesCheck['stage']) =>
        checks.find((one) => one.series === series && one.stage === stage && !one.isWaiting) ?? null;
      const [found, left] = [typed('found'), typed('left')];
      // Of clock readings those series count that have a limit.
      if ((found === null && left === null) || (limits.length === 0 && item.shape === 'four_clock'))
        return [];
      const read = { found_mm: found?.value_mm ?? null, left_mm: left?.value_mm ?? null };
      const at: Opening = { item, series, unitHours, following_h, fitted };
      return (limits.length === 0 ? [null] : limits).map((limit) => seriesAfter(bench, at, read, limit));
    }),
  );
  return { following_h, ratedLife_h: bench.unit.ratedLife_h, series: rows };
}

/** The overhaul as one series sees it. */
interface Opening {
  readonly item: ItemBench;
  readonly series: string;
  readonly unitHours: number | null;
  readonly following_h: number | null;
  readonly fitted: readonly string[];
}

function seriesAfter(
  bench: UnitBench,
  opening: Opening,
  read: Pick<SeriesAfter, 'found_mm' | 'left_mm'>,
  limit: SeriesLimit | null,
): SeriesAfter {
  const { item, series, unitHours, following_h, fitted } = opening;
  const question = item.questions.get(series);
  const own = bench.readings.get(series) ?? [];
  const found = lineFound(question, unitHours);
  const sameState = isSameState(item, fitted);
  const before = sameState ? found : lineRenewed(question, bench.unit);
  const base: SeriesAfter = {
    series,
    ...read,
    ...wearOf(question, own, unitHours, read.found_mm),
    expectedWear_mm_per_10kh: 'reason' in found ? null : slopeOf(found.line).mean,
    reassembly_mm: read.left_mm === null || read.found_mm === null ? null : read.left_mm - read.found_mm,
    limitKind: limit?.kind ?? null,
    limit_mm: limit?.limit_mm ?? null,
    chanceBefore: null,
    chanceAfter: null,
    medianBefore_h: null,
    medianAfter_h: null,
    reason: null,
  };
  if (limit === null) return { ...base, reason: 'no limit: no verdict' };
  if ('reason' in before) return { ...base, reason: before.reason };
  if (question === undefined || unitHours === null) return base;
  const line = lineAfter(question, own, unitHours, sameState, read);
  const after = line === null ? null : { line, x: before.x };
  const chance = (at: LineAt | null) =>
    at === null || following_h === null
      ? null
      : chancePast(at.line, limit.limit_mm, limit.kind, at.x + (following_h - unitHours) / 10_000);
  const median = (at: LineAt | null) => (at === null ? null : medianHours(at, limit, unitHours, bench.unit));
  return {
    ...base,
    chanceBefore: chance(before),
    chanceAfter: chance(after),
    medianBefore_h: median(before),
    medianAfter_h: median(after),
  };
}

/** Wear since the first reading of the run. */
function wearOf(
  question: MarginQuestion | undefined,
  own: readonly SeriesReading[],
  unitHours: number | null,
  found_mm: number | null,
): Pick<SeriesAfter, 'wear_mm' | 'wear_mm_per_10kh'> {
  const none = { wear_mm: null, wear_mm_per_10kh: null };
  const run = question?.run ?? null;
  if (run === null || unitHours === null || found_mm === null) return none;
  const first = own.find((reading) => reading.run === runName(question?.unit.row.unit ?? '', run.run));
  if (first === undefined || unitHours <= first.unitHours) return none;
  const wear_mm = found_mm - first.value_mm;
  return { wear_mm, wear_mm_per_10kh: (wear_mm * 10_000) / (unitHours - first.unitHours) };
}

/** The run that the unit leaves in, given the readings of this overhaul too; null without a reading of it. */
function lineAfter(
  { unit, run, fit }: MarginQuestion,
  own: readonly SeriesReading[],
  unitHours: number,
  sameState: boolean,
  { found_mm, left_mm }: Pick<SeriesAfter, 'found_mm' | 'left_mm'>,
): LineMixture | null {
  if (!fit?.posterior || !fit.fit) return null;
  const { unit: name } = unit.row;
  const noise_mm = fit.fit.sdNoise_mm;
  const known = own.map(({ run: ofRun, runHours, value_mm, lower_mm, upper_mm }): WearReading => {
    const width = lower_mm === null || upper_mm === null ? 0 : upper_mm - lower_mm;
    const weight = noise_mm > 0 ? intervalWeight(noise_mm, width) : 1;
    return { unit: name, run: ofRun, x: runHours / 10_000, y: value_mm, weight };
  });
  const x = run === null ? null : Math.max(0, unitHours - run.start_hours) / 10_000;
  const now = run === null ? '' : runName(name, run.run);
  const next = `${name} next run`;
  const foundNow = x === null || found_mm === null ? [] : [{ unit: name, run: now, x, y: found_mm }];
  const leftNow =
    left_mm === null || (sameState && x === null)
      ? []
      : [{ unit: name, run: sameState ? now : next, x: sameState ? (x ?? 0) : 0, y: left_mm }];
  const all: readonly WearReading[] = [...known, ...foundNow, ...leftNow];
  if (foundNow.length + leftNow.length === 0) return null;
  const statistics = wearStatistics(all);
  const index = statistics.runNames.indexOf(sameState ? now : next);
  return runLevel(fit.posterior, statistics, 0, index < 0 ? null : index);
}

/** Unit hours at which the limit is met with a chance of one half, no later than the end of the rated life; null: beyond. */
function medianHours(
  { line, x }: LineAt,
  { limit_mm, kind }: SeriesLimit,
  unitHours: number,
  { ratedLife_h }: UnitNow,
): number | null {
  const [met] = crossings(line, limit_mm, kind, [0.5], x, x + furthestForecast_h / 10_000);
  const hours = met == null ? null : unitHours + 10_000 * (met - x);
  if (ratedLife_h === null) return hours;
  return Math.min(hours ?? ratedLife_h, Math.max(ratedLife_h, unitHours));
}
