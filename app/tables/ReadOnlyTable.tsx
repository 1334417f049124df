'use client';

import { useMemo } from 'react';
import { canonicalTable } from '../../lib/records/canonicalTables';
import type { EditedTable } from '../../lib/records/decisions/editedTables';
import type { TableRow } from '../../lib/records/tables/TableRow';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { sourceWords } from '../words/tableWords';

interface ReadOnlyTableProps {
  readonly table: EditedTable;
  readonly caption: string;
  readonly rows: readonly TableRow[];
}

/** A table to be read: its rows as they stand, with their source. */
export function ReadOnlyTable({ table, caption, rows }: ReadOnlyTableProps) {
  const columns = useMemo(
    (): readonly DataColumn<TableRow>[] => [
      ...canonicalTable(table).columns.map(({ name, unit, kind }, index) => ({
        id: name,
        header: unit === undefined ? name : `${name}, ${unit}`,
        numeric: kind === 'number',
        rowHeader: index === 0,
        value: ({ texts }: TableRow) => texts[name] ?? '',
      })),
      {
        id: 'source of the row',
        header: 'Source of the row',
        text: true,
        value: (row) => sourceWords(row, []),
      },
    ],
    [table],
  );
  return (
    <DataTable
      key={table}
      caption={caption}
      columns={columns}
      rows={rows}
      rowKey={({ file, line }, index) => `${file} ${line} ${index}`}
      empty="The table has no row."
    />
  );
}
