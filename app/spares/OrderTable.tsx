'use client';

import { useMemo } from 'react';
import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import { formatCount, formatDate } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { moneyWords } from '../words/sparesSentence';

function count(id: string, header: string, value: (row: OrderRow) => number): DataColumn<OrderRow> {
  return {
    id,
    header,
    numeric: true,
    value,
    cell: (row) => (Number.isInteger(value(row)) ? formatCount(value(row)) : value(row).toFixed(1)),
  };
}

function day(
  id: string,
  header: string,
  value: (row: OrderRow) => string | null,
  reason: string,
): DataColumn<OrderRow> {
  return {
    id,
    header,
    numeric: true,
    value,
    cell: (row) => <Written text={value(row) === null ? null : formatDate(value(row))} reason={reason} />,
  };
}

function columnsOf(onPart: (part: string) => void): readonly DataColumn<OrderRow>[] {
  return [
    {
      id: 'part',
      header: 'Part',
      rowHeader: true,
      value: ({ part }) => part,
      cell: ({ part }) => (
        <button type="button" onClick={() => onPart(part)}>
          {part}
        </button>
      ),
    },
    {
      id: 'name',
      header: 'Name',
      value: ({ name }) => name,
      cell: ({ name }) => <Written text={name} reason="not given" />,
    },
    day('by', 'Order by', ({ orderBy }) => orderBy, 'nothing is short, or the lead time is not known'),
    { id: 'late', header: 'Late', value: ({ late }) => (late ? 'late' : 'no') },
    count('quantity', 'Quantity', ({ quantity }) => quantity),
    {
      id: 'cost',
      header: 'Cost',
      numeric: true,
      value: ({ cost }) => cost,
      cell: ({ cost, currency }) => <Written text={moneyWords(cost, currency)} reason="no price is given" />,
    },
    count('hand', 'On hand', ({ onHand }) => onHand),
    count('order', 'On order', ({ onOrder }) => onOrder),
    day('due', 'Due', ({ due }) => due, 'nothing is due'),
    {
      id: 'lead',
      header: 'Lead time, weeks',
      numeric: true,
      value: ({ leadTime_weeks }) => leadTime_weeks,
      cell: ({ leadTime_weeks }) => (
        <Written text={leadTime_weeks === null ? null : String(leadTime_weeks)} reason="not given" />
      ),
    },
    day('short', 'Short on', ({ shortOn }) => shortOn, 'not within the horizon'),
    count('lacking', 'Expected to lack', ({ expectedShortage }) => expectedShortage),
    count('mean', 'Demand, mean', ({ demandMean }) => demandMean),
    count('p90', 'Demand, 90 %', ({ demandP90 }) => demandP90),
    { id: 'reason', header: 'Why', text: true, value: ({ reason }) => reason },
  ];
}

interface OrderTableProps {
  readonly spares: Spares;
  readonly onPart: (part: string) => void;
}

/** Every part: what to order by which day, and what it is made from. */
export function OrderTable({ spares, onPart }: OrderTableProps) {
  const columns = useMemo(() => columnsOf(onPart), [onPart]);
  // The most urgent first; parts with nothing to order at the end.
  const rows = useMemo(
    () => spares.orders.toSorted((a, b) => ((a.orderBy ?? '9999') < (b.orderBy ?? '9999') ? -1 : 1)),
    [spares],
  );
  return (
    <section aria-label="Orders" className="landscape">
      <h2>Orders</h2>
      <DataTable
        caption={`Parts, their demand up to ${spares.until} and what to order`}
        columns={columns}
        rows={rows}
        rowKey={({ part }) => part}
        empty="No part is on record: add parts.csv on the Records page."
      />
    </section>
  );
}
