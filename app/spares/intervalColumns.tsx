import type { IntervalPoint } from '../../lib/analysis/demand/intervalCurve';
import { formatChance, formatFixed, formatHours } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { moneyWords } from '../words/sparesSentence';

/** Columns of the interval curve; cost in the currency given, if any. */
export function intervalColumns(currency: string | null): readonly DataColumn<IntervalPoint>[] {
  return [
    { id: 'group', header: 'Group', rowHeader: true, value: ({ group }) => group },
    {
      id: 'interval',
      header: 'Interval',
      unit: 'h',
      numeric: true,
      value: ({ interval_h }) => interval_h,
      cell: ({ interval_h }) => formatHours(interval_h),
    },
    {
      id: 'note',
      header: 'Is',
      value: ({ planned, extrapolated }) =>
        [planned ? 'as planned' : '', extrapolated ? 'longer than any run on record' : '']
          .filter((note) => note !== '')
          .join(', '),
    },
    {
      id: 'chance',
      header: 'Chance of passing a limit',
      unit: '0 to 1',
      numeric: true,
      value: ({ chance }) => chance,
      cell: ({ chance }) => formatChance(chance),
    },
    {
      id: 'overhauls',
      header: 'Overhauls a year',
      numeric: true,
      value: ({ overhaulsAYear }) => overhaulsAYear,
      cell: ({ overhaulsAYear }) => formatFixed(overhaulsAYear, 1),
    },
    {
      id: 'exceedances',
      header: 'Limits passed a year',
      numeric: true,
      value: ({ exceedancesAYear }) => exceedancesAYear,
      cell: ({ exceedancesAYear }) => formatFixed(exceedancesAYear, 2),
    },
    {
      id: 'cost',
      header: 'Cost a year',
      ...(currency === null ? {} : { unit: currency }),
      numeric: true,
      value: ({ costAYear }) => costAYear,
      cell: ({ costAYear }) => (
        <Written
          text={moneyWords(costAYear, currency)}
          reason={currency === null ? 'no costs are given' : 'a part has no price in that currency'}
        />
      ),
    },
  ];
}
