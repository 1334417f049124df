import type { DemandRow, StockRow } from '../../lib/analysis/demand/types';
import { formatFixed, formatPieces } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';

function pieces<Row>(id: string, header: string, value: (row: Row) => number): DataColumn<Row> {
  return { id, header, numeric: true, value, cell: (row) => formatPieces(value(row)) };
}

/** Columns of the demand by quarter. */
export const demandColumns: readonly DataColumn<DemandRow>[] = [
  { id: 'quarter', header: 'Quarter', rowHeader: true, value: ({ quarter }) => quarter },
  {
    id: 'mean',
    header: 'Mean',
    numeric: true,
    value: ({ mean }) => mean,
    cell: ({ mean }) => formatFixed(mean, 2),
  },
  pieces('p10', '10 %', ({ p10 }) => p10),
  pieces('p50', '50 %', ({ p50 }) => p50),
  pieces('p90', '90 %', ({ p90 }) => p90),
  pieces('p95', '95 %', ({ p95 }) => p95),
];

/** Columns of the stock at the end of each quarter; the service level in words. */
export function stockColumns(level: string): readonly DataColumn<StockRow>[] {
  return [
    { id: 'date', header: 'At the end of', date: true, rowHeader: true, value: ({ date }) => date },
    pieces('median', 'Median', ({ median }) => median),
    pieces('level', `Or more with ${level}`, ({ atServiceLevel }) => atServiceLevel),
  ];
}
