'use client';

import { useMemo } from 'react';
import { DataTable } from '../table/DataTable';
import { fleetColumns } from './fleetColumns';
import type { FleetFilter, FleetRow } from './fleetRows';

interface FleetTableProps {
  readonly rows: readonly FleetRow[];
  readonly filter: FleetFilter;
  readonly sort: string;
  readonly onSort: (sort: string) => void;
}

/** The picture's numbers, one row a unit. */
export function FleetTable({ rows, filter, sort, onSort }: FleetTableProps) {
  const columns = useMemo(() => fleetColumns(filter.series), [filter.series]);
  return (
    <section aria-label="Units" className="landscape">
      <h2>Units</h2>
      <p>
        Level, margin and dates are those of the series that decides: the one whose limit has the highest
        chance of being met at the next planned overhaul. Early, median and late are the dates by which its
        limit is met with a chance of 10, 50 and 90 %. The chance then joins all series with a limit: of each
        characteristic the largest chance, then 1 − the product of (1 − chance) over the characteristics.
      </p>
      <DataTable
        caption="Units by what cannot wait"
        columns={columns}
        rows={rows}
        rowKey={(row) => row.unit.unit}
        empty="No unit passes the filters."
        sort={sort}
        onSort={onSort}
      />
    </section>
  );
}
