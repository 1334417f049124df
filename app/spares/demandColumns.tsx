import type { DemandRow } from '../../lib/analysis/demand/types';
import type { DataColumn } from '../table/DataColumn';

function piecesColumn(id: string, header: string, value: (row: DemandRow) => number): DataColumn<DemandRow> {
  return {
    id,
    header,
    numeric: true,
    value,
    cell: (row) => (Number.isInteger(value(row)) ? String(value(row)) : value(row).toFixed(2)),
  };
}

/** Columns of the demand by quarter. */
export const demandColumns: readonly DataColumn<DemandRow>[] = [
  { id: 'quarter', header: 'Quarter', rowHeader: true, value: ({ quarter }) => quarter },
  piecesColumn('mean', 'Mean', ({ mean }) => mean),
  piecesColumn('p10', '10 %', ({ p10 }) => p10),
  piecesColumn('p50', '50 %', ({ p50 }) => p50),
  piecesColumn('p90', '90 %', ({ p90 }) => p90),
  piecesColumn('p95', '95 %', ({ p95 }) => p95),
];
