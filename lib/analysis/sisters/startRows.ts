import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { falseDiscovery } from '../../stats/sisters/falseDiscovery';
import type { SisterFunnel, StartRow } from './types';

/** Own start levels of a group's units, furthest from the group's first; q-values over the group. Lengths in mm. */
export function startRows(group: string, series: string, starts: SisterFunnel | null): readonly StartRow[] {
  if (starts === null) return [];
  const rows = starts.units.flatMap((unit) => {
    if (unit.reason !== null) return [];
    const { unit: name, value, sd, score, outside, readings } = unit;
    return [
      {
        unit: name,
        group,
        series,
        own_mm: value,
        sd_mm: sd,
        difference_mm: value - starts.centre,
        outside,
        tailProbability: 2 * normalCdf(-Math.abs(score), 0, 1),
        readings,
      },
    ];
  });
  const q = falseDiscovery(rows.map(({ tailProbability }) => tailProbability));
  return rows
    .map((row, index) => ({ ...row, q: q[index] ?? 1 }))
    .sort((a, b) => a.tailProbability - b.tailProbability);
}
