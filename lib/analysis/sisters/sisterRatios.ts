import { group, range } from 'd3-array';
import { falseDiscovery } from '../../stats/sisters/falseDiscovery';
import { shortRateRatio } from '../../stats/sisters/rateRatio';
import { unitRate } from '../../stats/wear/unitRate';
import type { GroupFit } from '../groupFits';
import type { SisterRatio } from './types';

/** What files hold of every unit against its sisters, in order of fit and unit; groups without a fit have none. */
export function sisterRatios(fits: Iterable<GroupFit>): readonly SisterRatio[] {
  return [...fits].flatMap(({ row, statistics, posterior }) =>
    posterior === null
      ? []
      : statistics.unitNames.map((unit, index) => ({
          unit,
          group: row.group,
          series: row.series,
          rate: shortRateRatio(unitRate(posterior, statistics, index)),
        })),
  );
}

/** q-value of every row, within its series over all groups. */
export function qOfSeries(rows: readonly SisterRatio[]): readonly number[] {
  const q: number[] = [];
  for (const places of group(range(rows.length), (row) => rows[row]?.series).values()) {
    const own = falseDiscovery(places.map((row) => (rows[row] as SisterRatio).rate.tailProbability));
    for (const [k, row] of places.entries()) q[row] = own[k] as number;
  }
  return q;
}
