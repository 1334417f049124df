'use client';

import { useMemo } from 'react';
import { Term } from '../frame/Term';
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
        Level, margin and dates are those of the series that decides: the one whose{' '}
        <Term name="limit">limit</Term> has the highest chance of being met at the next planned overhaul.
        Without a limit there is no <Term name="verdict">verdict</Term>. Early, median and late are the dates
        by which its limit is met with a chance of 10, 50 and 90 %. The chance then joins all series with a
        limit: of each <Term name="characteristic">characteristic</Term> the largest chance, then 1 − the
        product of (1 − chance) over the characteristics.
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
