import type { OrderRow } from '../../lib/analysis/demand/types';
import { formatDate, formatPieces } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';
import { moneyWords } from '../words/sparesSentence';

function count(id: string, header: string, value: (row: OrderRow) => number): DataColumn<OrderRow> {
  return { id, header, numeric: true, value, cell: (row) => formatPieces(value(row)) };
}

/** Columns of the orders, without the part that each is of. */
export const orderColumns: readonly DataColumn<OrderRow>[] = [
  {
    id: 'by',
    header: 'Order by',
    saved: [
      { header: 'Order by', value: ({ orderBy }) => orderBy },
      { header: 'Late', value: ({ late, orderBy }) => (late && orderBy !== null ? 'late' : null) },
    ],
    value: ({ orderBy }) => orderBy,
    cell: ({ orderBy, late, quantity }) => (
      <Written
        text={orderBy === null ? null : `${formatDate(orderBy)}${late ? ', late' : ''}`}
        reason={quantity > 0 ? 'no lead time is given' : 'nothing is short'}
      />
    ),
  },
  count('quantity', 'Quantity', ({ quantity }) => quantity),
  {
    id: 'cost',
    header: 'Cost',
    numeric: true,
    saved: [
      { header: 'Cost', value: ({ cost }) => cost },
      { header: 'Currency', value: ({ cost, currency }) => (cost === null ? null : currency) },
    ],
    value: ({ cost }) => cost,
    cell: ({ cost, currency }) => <Written text={moneyWords(cost, currency)} reason="no price is given" />,
  },
  {
    id: 'short',
    header: 'Short on',
    value: ({ shortOn }) => shortOn,
    cell: ({ shortOn }) => (
      <Written text={shortOn === null ? null : formatDate(shortOn)} reason="not within the horizon" />
    ),
  },
  count('hand', 'On hand', ({ onHand }) => onHand),
  count('order', 'On order', ({ onOrder }) => onOrder),
  {
    id: 'due',
    header: 'Due',
    value: ({ due }) => due,
    cell: ({ due }) => (
      <Written text={due === null ? null : formatDate(due)} reason="no delivery with a day is on order" />
    ),
  },
  {
    id: 'lead',
    header: 'Lead, weeks',
    numeric: true,
    value: ({ leadTime_weeks }) => leadTime_weeks,
    cell: ({ leadTime_weeks }) => (
      <Written text={leadTime_weeks === null ? null : formatPieces(leadTime_weeks)} reason="not given" />
    ),
  },
  count('lacking', 'Lacking, mean', ({ expectedShortage }) => expectedShortage),
  count('mean', 'Demand, mean', ({ demandMean }) => demandMean),
  count('p90', 'Demand, 90 %', ({ demandP90 }) => demandP90),
];
