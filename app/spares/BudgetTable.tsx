import type { BudgetRow, Spares } from '../../lib/analysis/demand/types';
import { formatCount, formatDate } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';

function money(id: string, header: string, value: (row: BudgetRow) => number): DataColumn<BudgetRow> {
  return { id, header, numeric: true, value, cell: (row) => formatCount(Math.round(value(row))) };
}

const columns: readonly DataColumn<BudgetRow>[] = [
  { id: 'year', header: 'Year', rowHeader: true, value: ({ year }) => year },
  { id: 'currency', header: 'Currency', value: ({ currency }) => currency },
  money('ordered', 'Orders to place', ({ ordered }) => ordered),
  money('mean', 'Parts fitted, mean', ({ mean }) => mean),
  money('p10', '10 %', ({ p10 }) => p10),
  money('p50', '50 %', ({ p50 }) => p50),
  money('p90', '90 %', ({ p90 }) => p90),
  money('p95', '95 %', ({ p95 }) => p95),
];

/** Money by year: the orders to place, and what the parts fitted cost with its spread. */
export function BudgetTable({ spares }: { readonly spares: Spares }) {
  const { asOf, until, budget } = spares;
  return (
    <section aria-label="Money by year">
      <h2>Money by year</h2>
      <p>
        Orders to place are the next order of each part, in the year of its last order day; later ones follow
        from what is used until then. Parts fitted is the value of what the overhauls use, from stock or new:
        what the stock costs in the long run.
      </p>
      <DataTable
        caption={`From ${formatDate(asOf)} to ${formatDate(until)}; the first and the last year are parts of one`}
        columns={columns}
        rows={budget}
        rowKey={({ year, currency }) => `${year} ${currency}`}
        empty="No part has a price and a currency: add unit_cost and currency to parts.csv on the Records page."
      />
    </section>
  );
}
