'use client';

import { useMemo } from 'react';
import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import { formatDate, formatPieces } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { capitalised } from '../words/seriesName';
import { moneyWords } from '../words/sparesSentence';
import { partAddress } from './sparesAddress';

function count(id: string, header: string, value: (row: OrderRow) => number): DataColumn<OrderRow> {
  return { id, header, numeric: true, value, cell: (row) => formatPieces(value(row)) };
}

function columnsOf(query: URLSearchParams, onPart: (part: string) => void): readonly DataColumn<OrderRow>[] {
  return [
    {
      id: 'part',
      header: 'Part',
      rowHeader: true,
      value: ({ part }) => part,
      cell: (row) => (
        <a
          href={partAddress(query, row.part)}
          onClick={(event) => {
            if (event.ctrlKey || event.metaKey || event.shiftKey) return;
            event.preventDefault();
            onPart(row.part);
          }}
        >
          {row.part}
        </a>
      ),
    },
    {
      id: 'by',
      header: 'Order by',
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
}

interface OrderTableProps {
  readonly spares: Spares;
  readonly query: URLSearchParams;
  readonly onPart: (part: string) => void;
}

/** Every part: what to order by which day, and what it is made from. */
export function OrderTable({ spares, query, onPart }: OrderTableProps) {
  const columns = useMemo(() => columnsOf(query, onPart), [query, onPart]);
  // The most urgent first; parts with nothing to order at the end.
  const rows = useMemo(() => {
    const day = ({ orderBy, shortOn }: OrderRow) => orderBy ?? shortOn ?? '9999';
    return spares.orders.toSorted((a, b) => (day(a) < day(b) ? -1 : 1));
  }, [spares]);
  return (
    <section aria-label="Orders" className="landscape">
      <h2>Orders</h2>
      <DataTable
        caption={`Parts and what to order; demand and stock in pieces, demand up to ${spares.until}`}
        columns={columns}
        rows={rows}
        rowKey={({ part }) => part}
        below={({ name, reason }) => (
          <>
            {name === null ? '' : `${name}. `}
            {capitalised(reason)}.
          </>
        )}
        empty="No part is on record: add parts.csv on the Records page."
      />
      <p>
        Lacking, mean: pieces expected to be missing by the end of lead time plus review period if none are
        ordered.
      </p>
    </section>
  );
}
