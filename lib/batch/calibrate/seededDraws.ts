import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Seeded draws: uniform on [0, 1) and standard normal by the inverse distribution function. */
export function seededDraws(seed: number): { uniform: () => number; normal: () => number } {
  const generator = xoroshiro128plus(seed);
  const uniform = () => uniformFloat64(generator);
  const normal = () => {
    let probability = uniform();
    while (probability <= 0) probability = uniform();
    return normalQuantile(probability, 0, 1);
  };
  return { uniform, normal };
}
