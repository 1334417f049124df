'use client';

import { useMemo } from 'react';
import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import { formatDate } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { capitalised } from '../words/seriesName';
import { noParts } from '../words/sparesSentence';
import { orderColumns } from './orderColumns';
import { partAddress } from './sparesAddress';

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
    ...orderColumns,
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
        caption={`Parts and what to order; demand and stock in pieces, demand up to ${formatDate(spares.until)}`}
        columns={columns}
        rows={rows}
        rowKey={({ part }) => part}
        below={({ name, reason }) => (
          <>
            {name === null ? '' : `${name}. `}
            {capitalised(rewritten(reason))}.
          </>
        )}
        empty={noParts}
      />
      {rows.length > 0 && (
        <p>
          Lacking, mean: pieces expected to be missing by the end of lead time plus review period if none are
          ordered.
        </p>
      )}
    </section>
  );
}
