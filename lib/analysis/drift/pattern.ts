import { rollup } from 'd3-array';
import { type OverhaulScores, risePattern } from '../../stats/residuals/risePattern';
import type { ChartedReading, ChartedSeries, Pattern } from './types';

/**
 * Whether a departure to one side, from the start of its shift to its latest signal, is gone after reassembly or persists.
 *
 * @param readings with z foretold from before their own overhaul, see risePattern
 */
export function patternOf(
  { readings }: Pick<ChartedSeries, 'readings'>,
  side: 'upper' | 'lower',
  sinceDate: string,
  untilDate: string,
): Pattern {
  const sign = side === 'upper' ? 1 : -1;
  const scoreOf = (overhaul: readonly ChartedReading[], stage: ChartedReading['stage']) => {
    const z = overhaul.find((reading) => reading.stage === stage)?.z ?? null;
    return z === null ? null : sign * z;
  };
  const overhauls = rollup(
    readings.filter(({ date }) => date >= sinceDate && date <= untilDate),
    (own): OverhaulScores => ({ found: scoreOf(own, 'found'), left: scoreOf(own, 'left') }),
    ({ overhaul }) => overhaul,
  );
  const { pattern } = risePattern([...overhauls.values()]);
  return pattern === 'no rise' ? 'cannot be told' : pattern;
}
