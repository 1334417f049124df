'use client';

import {
  createColumnHelper,
  createSortedRowModel,
  type Row,
  rowSortingFeature,
  type SortingState,
  tableFeatures,
  useTable,
} from '@tanstack/react-table';
import { type ReactNode, useId, useMemo, useRef, useState } from 'react';
import { TableExport } from '../export/TableExport';
import { ColumnChoice } from './ColumnChoice';
import { compareValues } from './compareValues';
import type { DataColumn } from './DataColumn';
import { DataRow } from './DataRow';
import { ScrollBox } from './ScrollBox';
import { SortHeader } from './SortHeader';
import { Spacer } from './Spacer';
import { savedTable } from './savedTable';
import { sortFromText, sortToText } from './sortText';
import { useRowWindow } from './useRowWindow';
import { useShownColumns } from './useShownColumns';

interface DataTableProps<Data> {
  readonly caption: string;
  readonly columns: readonly DataColumn<Data>[];
  readonly rows: readonly Data[];
  readonly rowKey: (row: Data, index: number) => string;
  /** What is said in place of an empty table. */
  readonly empty: string;
  /** Sorting kept by the caller, as 'column' or '-column'; without it the table keeps its own. */
  readonly sort?: string;
  readonly onSort?: (sort: string) => void;
  /** What stands under a row over all of its columns; null for nothing. */
  readonly below?: (row: Data) => ReactNode;
}

/** With fewer columns than this there is nothing worth hiding. */
const leastChoice = 3;

const features = tableFeatures({ rowSortingFeature, sortedRowModel: createSortedRowModel() });

/** A table with a caption, sortable heads and a box of its own to scroll in; long ones draw only the rows in view. */
export function DataTable<Data extends object>({
  caption,
  columns,
  rows,
  rowKey,
  empty,
  sort,
  onSort,
  below,
}: DataTableProps<Data>) {
  const captionId = useId();
  const box = useRef<HTMLDivElement>(null);
  const choice = useShownColumns(columns);
  const [ownSort, setOwnSort] = useState('');
  const sorting = useMemo(
    () => sortFromText(sort ?? ownSort).filter((order) => columns.some((column) => column.id === order.id)),
    [sort, ownSort, columns],
  );
  const definitions = useMemo(() => {
    const helper = createColumnHelper<typeof features, Data>();
    return helper.columns(
      columns.map((column) =>
        helper.accessor((row) => column.value(row) ?? undefined, {
          id: column.id,
          header: column.header,
          sortUndefined: 'last',
          sortDescFirst: false,
          sortFn: (a, b, id) => compareValues(a.getValue(id), b.getValue(id)),
        }),
      ),
    );
  }, [columns]);
  const table = useTable({
    features,
    columns: definitions,
    data: rows,
    state: { sorting },
    enableMultiSort: false,
    onSortingChange: (update) => {
      const next: SortingState = typeof update === 'function' ? update(sorting) : update;
      (onSort ?? setOwnSort)(sortToText(next));
    },
  });
  const sorted: readonly Row<typeof features, Data>[] = table.getRowModel().rows;
  const view = useRowWindow(sorted.length, box);
  const unitColumn = columns.find(({ id }) => id === 'unit');
  const unitOf = (row: Data) => unitColumn?.value(row)?.toString();
  if (rows.length === 0) return <p>{empty}</p>;
  return (
    <>
      <ScrollBox box={box} labelledBy={captionId} rows={rows.length}>
        <table aria-rowcount={sorted.length + 1}>
          <caption id={captionId}>{caption}</caption>
          <thead>
            <tr aria-rowindex={1}>
              {choice.shown.map(({ id, header, term, numeric }) => (
                <SortHeader
                  key={id}
                  name={header}
                  term={term}
                  numeric={numeric ?? false}
                  sorted={table.getColumn(id)?.getIsSorted() ?? false}
                  onToggle={() => table.getColumn(id)?.toggleSorting()}
                />
              ))}
            </tr>
          </thead>
          <Spacer height_px={view.before} />
          <tbody>
            {view.indexes.map((index) => {
              const row = sorted[index];
              if (row === undefined) return null;
              return (
                <DataRow
                  key={rowKey(row.original, row.index)}
                  row={row.original}
                  index={index}
                  columns={choice.shown}
                  unit={unitOf(row.original)}
                  measure={view.measure}
                  below={below?.(row.original) ?? null}
                />
              );
            })}
          </tbody>
          <Spacer height_px={view.after} />
        </table>
      </ScrollBox>
      <div className="tableFoot">
        {columns.length >= leastChoice && <ColumnChoice title={caption} columns={columns} choice={choice} />}
        <TableExport
          title={caption}
          table={() =>
            savedTable(
              columns,
              sorted.map(({ original }) => original),
            )
          }
        />
      </div>
    </>
  );
}
