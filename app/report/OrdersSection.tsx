'use client';

import Link from 'next/link';
import { type ReactNode, useMemo } from 'react';
import type { OrderRow } from '../../lib/analysis/demand/types';
import type { Paper } from '../../lib/analysis/report/types';
import { formatDate, formatPieces } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { Prose } from '../frame/Prose';
import { orderColumns } from '../spares/orderColumns';
import { partAddress } from '../spares/sparesAddress';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { ordersSentence } from '../words/reportWords';
import { capitalised } from '../words/seriesName';
import { noParts, ordersDue } from '../words/sparesSentence';

interface OrdersSectionProps {
  readonly paper: Paper;
  /** Orders to place before the stock is looked at next. */
  readonly due: readonly OrderRow[];
  /** Settings of the Spares page. */
  readonly sparesQuery: URLSearchParams;
  readonly source: ReactNode;
}

const shown = ['by', 'quantity', 'cost', 'short', 'hand', 'order', 'due', 'lead', 'mean', 'p90'];

/** Columns of days, which must not break on narrow paper. */
const days = ['by', 'short', 'due'];

function ownColumns(own: NonNullable<Paper['ownDemand']>): readonly DataColumn<OrderRow>[] {
  const demandOf = new Map(own.map((one) => [one.part, one]));
  const mean = ({ part }: OrderRow) => demandOf.get(part)?.mean ?? 0;
  const p90 = ({ part }: OrderRow) => demandOf.get(part)?.p90 ?? 0;
  return [
    {
      id: 'own',
      header: 'Of the scope, mean',
      numeric: true,
      value: mean,
      cell: (row) => formatPieces(mean(row)),
    },
    {
      id: 'ownP90',
      header: 'Of the scope, 90 %',
      numeric: true,
      value: p90,
      cell: (row) => formatPieces(p90(row)),
    },
  ];
}

function columnsOf(ownDemand: Paper['ownDemand'], query: URLSearchParams): readonly DataColumn<OrderRow>[] {
  return [
    {
      id: 'part',
      header: 'Part',
      rowHeader: true,
      value: ({ part }) => part,
      cell: ({ part }) => (
        <Link href={`/spares/${partAddress(query, part)}`} prefetch={false}>
          {part}
        </Link>
      ),
    },
    ...orderColumns
      .filter(({ id }) => shown.includes(id))
      .map((column) => (days.includes(column.id) ? { ...column, numeric: true } : column)),
    ...(ownDemand === null ? [] : ownColumns(ownDemand)),
  ];
}

/** What to order by which day, the most urgent first. */
export function OrdersSection({ paper, due, sparesQuery, source }: OrdersSectionProps) {
  const { spares, ownDemand } = paper;
  const columns = useMemo(() => columnsOf(ownDemand, sparesQuery), [ownDemand, sparesQuery]);
  const orders = useMemo(() => ordersDue(spares), [spares]);
  return (
    <section aria-label="Spares to order">
      <h2>Spares to order</h2>
      <p>
        {ordersSentence(paper, due)} {source}
      </p>
      <DataTable
        caption={`Orders, the most urgent first; demand and stock in pieces, demand up to ${formatDate(spares.until)}`}
        columns={columns}
        rows={orders}
        rowKey={({ part }) => part}
        below={({ name, reason }) => (
          <Prose text={`${name === null ? '' : `${name}. `}${capitalised(rewritten(reason))}.`} />
        )}
        empty={spares.orders.length === 0 ? noParts : 'Nothing needs ordering.'}
      />
    </section>
  );
}
