import type { Difference, PartDifference } from '../../lib/analysis/demand/whatIf';
import { formatCount } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { changeWords, moneyWords } from '../words/sparesSentence';

function number(
  id: string,
  header: string,
  value: (row: PartDifference) => Difference,
): DataColumn<PartDifference> {
  return {
    id,
    header,
    numeric: true,
    value: (row) => value(row).changed - value(row).present,
    cell: (row) =>
      changeWords(value(row), (one) => (Number.isInteger(one) ? formatCount(one) : one.toFixed(1))),
  };
}

/** Columns of what a changed plan does to a part. */
export const whatIfColumns: readonly DataColumn<PartDifference>[] = [
  { id: 'part', header: 'Part', rowHeader: true, value: ({ part }) => part },
  number('quantity', 'Quantity', ({ quantity }) => quantity),
  {
    id: 'by',
    header: 'Order by',
    value: ({ orderBy }) => orderBy.changed,
    cell: ({ orderBy }) => changeWords(orderBy, (day) => day ?? 'no order'),
  },
  number('mean', 'Demand, mean', ({ demandMean }) => demandMean),
  number('p90', 'Demand, 90 %', ({ demandP90 }) => demandP90),
  {
    id: 'cost',
    header: 'Cost',
    numeric: true,
    value: ({ cost }) => cost.changed,
    cell: ({ cost, currency }) => (
      <Written
        text={cost.changed === null ? null : changeWords(cost, (value) => moneyWords(value, currency) ?? '–')}
        reason="no price is given"
      />
    ),
  },
];
