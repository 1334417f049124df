import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { skipN } from 'pure-rand/utils/skipN';
import { hash32 } from './hash32';
import { normalFrom, normalTable } from './normalTable';

/** Draws of one named stream. */
export interface SeededStream {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Fills the array with independent standard normal values. */
  normals(values: Float64Array): void;
  /** The numbers 0 to count - 1 in random order. */
  shuffled(count: number): Int32Array;
}

/**
 * Random numbers that belong to a seed and a name: the same pair gives the same numbers on every machine, whatever else
 * is drawn.
 */
export function seededStream(seed: number, name: string): SeededStream {
  const generator = xoroshiro128plus(hash32(`${seed}/${name}`));
  skipN(generator, 32);
  const uniform = () => uniformFloat64(generator);
  return {
    uniform,
    normals(values) {
      const table = normalTable();
      for (let k = 0; k < values.length; k++) values[k] = normalFrom(table, generator.next() >>> 8);
    },
    shuffled(count) {
      const order = Int32Array.from({ length: count }, (_, k) => k);
      for (let k = count - 1; k > 0; k--) {
        const other = Math.floor(uniform() * (k + 1));
        const kept = order[k] as number;
        order[k] = order[other] as number;
        order[other] = kept;
      }
      return order;
    },
  };
}
