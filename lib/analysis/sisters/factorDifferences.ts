import { group } from 'd3-array';
import { analysisOfMeans } from '../../stats/sisters/analysisOfMeans';
import type { ChartedSeries } from '../drift/types';
import { dutyOf } from '../grouping/dutyOf';
import type { UnitNow } from '../unitNow';
import { unitScores } from './sisterGroups';
import type { Compared, Factor, FactorDifference, SisterGroup } from './types';

const confidence = 0.95;

/**
 * Differences between sites and duties in units' own wear rates and start levels, and between workshops in what they leave
 * behind, each in standard deviations with limits that hold for all levels at once.
 *
 * A unit's score is that of the funnel; a reading's is its forecast residual. Both are standard normal and independent if
 * levels do not differ, so their standard deviation of 1 is known.
 */
export function factorDifferences(
  units: ReadonlyMap<string, UnitNow>,
  groups: readonly SisterGroup[],
  charted: readonly ChartedSeries[],
): readonly FactorDifference[] {
  const chartsOf = group(charted, ({ series }) => series);
  return [...group(groups, ({ series }) => series)].flatMap(([series, own]) => {
    const rates = [...unitScores(own, 'rate')];
    const starts = [...unitScores(own, 'start')];
    const site = ([unit]: readonly [string, number]) => units.get(unit)?.row.site ?? null;
    const duty = ([unit]: readonly [string, number]) => dutyOf(units.get(unit)?.hoursPerYear ?? null);
    const asLeft = (chartsOf.get(series) ?? [])
      .flatMap(({ readings }) => readings)
      .flatMap(({ stage, workshop, z }): [string, number][] =>
        stage === 'left' && workshop !== null && z !== null ? [[workshop, z]] : [],
      );
    return [
      difference('site', 'wear rate', series, rates, site),
      difference('site', 'start level', series, starts, site),
      difference('duty', 'wear rate', series, rates, duty),
      difference('duty', 'start level', series, starts, duty),
      difference('workshop', 'as left', series, asLeft, ([workshop]) => workshop),
    ];
  });
}

function difference(
  factor: Factor,
  compared: Compared,
  series: string,
  scores: readonly (readonly [string, number])[],
  levelOf: (score: readonly [string, number]) => string | null,
): FactorDifference {
  const known = scores.flatMap((score) => {
    const level = levelOf(score);
    return level === null ? [] : [{ level, value: score[1] }];
  });
  const levels = [...group(known, ({ level }) => level)].map(([name, own]) => ({
    name,
    values: own.map(({ value }) => value),
  }));
  const means = analysisOfMeans(levels, confidence, 1);
  const common = { factor, compared, series };
  if (means.reason !== null) return { ...common, levels: [], reason: means.reason };
  return {
    ...common,
    levels: means.levels.map(({ name, ...level }) => ({ level: name, ...level })),
    reason: null,
  };
}
