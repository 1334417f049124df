import Link from 'next/link';
import { unitAddress } from '../address/unitAddress';
import type { DataColumn } from './DataColumn';

/**
 * The column of units that leads to each one's page.
 *
 * @param seriesOf the series that the page is opened on; its usual one if null
 */
export function unitLinkColumn<Row extends { readonly unit: string }>(
  seriesOf: (row: Row) => string | null,
): DataColumn<Row> {
  return {
    id: 'unit',
    header: 'Unit',
    term: 'unit',
    rowHeader: true,
    value: ({ unit }) => unit,
    cell: (row) => (
      <Link href={unitAddress(row.unit, seriesOf(row))} prefetch={false}>
        {row.unit}
      </Link>
    ),
  };
}
