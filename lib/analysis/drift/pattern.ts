import { rollup } from 'd3-array';
import { type OverhaulScores, risePattern } from '../../stats/residuals/risePattern';
import type { ChartedReading, ChartedSeries, Pattern } from './types';

/** Whether a departure to one side since a date is gone after reassembly or persists, see risePattern. */
export function patternOf(
  { readings }: Pick<ChartedSeries, 'readings'>,
  side: 'upper' | 'lower',
  sinceDate: string,
): Pattern {
  const sign = side === 'upper' ? 1 : -1;
  const scoreOf = (overhaul: readonly ChartedReading[], stage: ChartedReading['stage']) => {
    const z = overhaul.find((reading) => reading.stage === stage)?.z ?? null;
    return z === null ? null : sign * z;
  };
  const overhauls = rollup(
    readings.filter(({ date }) => date >= sinceDate),
    (own): OverhaulScores => ({ found: scoreOf(own, 'found'), left: scoreOf(own, 'left') }),
    ({ overhaul }) => overhaul,
  );
  const { pattern } = risePattern([...overhauls.values()]);
  return pattern === 'no rise' ? 'cannot be told' : pattern;
}
