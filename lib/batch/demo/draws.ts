import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { skipN } from 'pure-rand/utils/skipN';
import { hash32 } from '../../stats/draws/hash32';

/** The one seed of the demo fleet. */
export const demoSeed = 8;

/** A stream of seeded draws. */
export interface Draws {
  /** Uniform on (0, 1), never 0 or 1. */
  uniform(): number;
  /** Normal with the given mean and standard deviation. */
  normal(mean: number, sd: number): number;
}

/**
 * A stream of draws that belongs to a name: the same name gives the same draws, whatever else is drawn.
 * Normal draws are quantile(uniform). One stream a purpose keeps the rest of the fleet unchanged when one part of it is edited.
 */
export function drawsFor(name: string): Draws {
  const generator = xoroshiro128plus(hash32(`${demoSeed}/${name}`));
  skipN(generator, 32);
  const uniform = () => (uniformFloat64(generator) * (2 ** 53 - 1) + 0.5) / 2 ** 53;
  return { uniform, normal: (mean, sd) => mean + sd * normalQuantile(uniform(), 0, 1) };
}
