import { group } from 'd3-array';
import { analysisOfMeans } from '../../stats/sisters/analysisOfMeans';
import type { ChartedSeries } from '../drift/types';
import { dutyOf } from '../grouping/dutyOf';
import type { GroupBy } from '../grouping/sisterGroupOf';
import type { UnitNow } from '../unitNow';
import { unitScores } from './sisterGroups';
import type { Compared, Factor, FactorDifference, SisterGroup } from './types';

const confidence = 0.95;

/**
 * Differences between sites and duties in units' own wear rates and start levels, and between workshops in what they leave
 * behind, each in standard deviations with limits that hold for all levels at once.
 *
 * A unit's score is that of the funnel; a reading's is its forecast residual. Both are standard normal and independent if
 * levels do not differ, so their standard deviation of 1 is known. Sisters of one site, or duty, cannot show how sites, or
 * duties, differ: each unit is then held against its own site alone.
 */
export function factorDifferences(
  units: ReadonlyMap<string, UnitNow>,
  groups: readonly SisterGroup[],
  charted: readonly ChartedSeries[],
  groupBy: GroupBy = 'frame',
): readonly FactorDifference[] {
  const chartsOf = group(charted, ({ series }) => series);
  return [...group(groups, ({ series }) => series)].flatMap(([series, own]) => {
    const rates = [...unitScores(own, 'rate')];
    const starts = [...unitScores(own, 'start')];
    const site = ([unit]: Score) => units.get(unit)?.row.site ?? null;
    const duty = ([unit]: Score) => dutyOf(units.get(unit)?.hoursPerYear ?? null);
    const asLeft = (chartsOf.get(series) ?? [])
      .flatMap(({ readings }) => readings)
      .flatMap(({ stage, workshop, z }): [string, number][] =>
        stage === 'left' && workshop !== null && z !== null ? [[workshop, z]] : [],
      );
    const byUnit = (factor: 'site' | 'duty', levelOf: LevelOf) =>
      groupBy === `frame+${factor}`
        ? [withinOne(factor, 'wear rate', series), withinOne(factor, 'start level', series)]
        : [
            difference(factor, 'wear rate', series, rates, levelOf),
            difference(factor, 'start level', series, starts, levelOf),
          ];
    return [
      ...byUnit('site', site),
      ...byUnit('duty', duty),
      difference('workshop', 'as left', series, asLeft, ([workshop]) => workshop),
    ];
  });
}

type Score = readonly [name: string, score: number];
type LevelOf = (score: Score) => string | null;

function withinOne(factor: Factor, compared: Compared, series: string): FactorDifference {
  const reason = `each unit is compared with sisters of its own ${factor} here; choose sisters by frame to compare one ${factor} with another`;
  return { factor, compared, series, levels: [], reason };
}

function difference(
  factor: Factor,
  compared: Compared,
  series: string,
  scores: readonly Score[],
  levelOf: LevelOf,
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
