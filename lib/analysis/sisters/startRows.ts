import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import type { SisterFunnel, StartRow } from './types';

/**
 * Own start levels of a group's units, furthest from the group's first, with normal intervals of what the unit's own readings
 * say; q-values are still to come. Lengths in mm.
 */
export function startRows(group: string, series: string, starts: SisterFunnel | null): readonly StartRow[] {
  if (starts === null) return [];
  return starts.units
    .flatMap((unit) => {
      if (unit.reason !== null) return [];
      const { unit: name, value, sd, score, outside, readings } = unit;
      const difference_mm = value - starts.centre;
      const at = (below: number) => difference_mm + sd * normalQuantile(below, 0, 1);
      return [
        {
          unit: name,
          group,
          series,
          own_mm: value,
          sd_mm: sd,
          difference_mm,
          interval_mm: {
            median: difference_mm,
            lower80: at(0.1),
            upper80: at(0.9),
            lower95: at(0.025),
            upper95: at(0.975),
          },
          outside,
          tailProbability: 2 * normalCdf(-Math.abs(score), 0, 1),
          q: 1,
          readings,
        },
      ];
    })
    .sort((a, b) => a.tailProbability - b.tailProbability);
}
