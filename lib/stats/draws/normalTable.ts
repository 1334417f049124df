import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';

/** Equally likely values that stand for the normal distribution; a power of two, see normalFrom. */
const SIZE = 65_536;

let table: Float64Array | null = null;

/**
 * The standard normal as 65,536 equally likely values: quantiles at (k + 1/2) / 65,536, scaled to variance 1.
 *
 * Look-ups instead of logarithms: the same values on every machine, whatever its logarithm's last bit, and fast.
 * The distribution function is met within 1 / 131,072; the furthest value is 4.3.
 */
export function normalTable(): Float64Array {
  if (table === null) {
    const values = Float64Array.from({ length: SIZE }, (_, k) => normalQuantile((k + 0.5) / SIZE, 0, 1));
    const variance = values.reduce((sum, value) => sum + value * value, 0) / SIZE;
    const scale = 1 / Math.sqrt(variance);
    table = values.map((value) => value * scale);
  }
  return table;
}

/** The normal value that belongs to a 32-bit integer. */
export function normalFrom(values: Float64Array, bits: number): number {
  return values[bits & (SIZE - 1)] as number;
}
