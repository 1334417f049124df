import type { ChartedReading, ChartedSeries, Pattern } from './types';

/** One-sided 5 % point of the standard normal: more than this does not come by chance. */
const beyondChance = 1.645;

/**
 * Whether a departure is gone after reassembly: as found and as left apart, sum of z / sqrt(n) of the readings since it
 * began, with the sign of its side.
 *
 * 'persists' if as left it is still beyond chance; 'vanishes' if as found it is, as left not, and the two means differ by
 * more than chance, (mean found - mean left) / sqrt(1 / n + 1 / n'); 'cannot be told' otherwise, and where a stage has no
 * reading since then. What it means is the engineer's to find.
 */
export function patternOf(
  { readings }: Pick<ChartedSeries, 'readings'>,
  side: 'upper' | 'lower',
  sinceDate: string,
): Pattern {
  const sign = side === 'upper' ? 1 : -1;
  const of = (stage: ChartedReading['stage']) =>
    readings
      .filter((reading) => reading.stage === stage && reading.date >= sinceDate && reading.z !== null)
      .map((reading) => sign * (reading.z as number));
  const [found, left] = [of('found'), of('left')];
  if (found.length === 0 || left.length === 0) return 'cannot be told';
  if (score(left) > beyondChance) return 'persists';
  const apart = (mean(found) - mean(left)) / Math.sqrt(1 / found.length + 1 / left.length);
  return score(found) > beyondChance && apart > beyondChance ? 'vanishes' : 'cannot be told';
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function score(values: readonly number[]): number {
  return mean(values) * Math.sqrt(values.length);
}
