import { memo, type ReactNode } from 'react';
import { formatCount, formatDate } from '../../lib/charts/format';
import { useWriting } from '../writing/useWriting';
import type { CellValue, DataColumn } from './DataColumn';
import { Written } from './Written';

function plainCell(value: CellValue, isDate: boolean): ReactNode {
  if (typeof value === 'number') return formatCount(value);
  return <Written text={isDate ? formatDate(value) : value} reason="not given in the data" />;
}

function cellClass<Data>(column: DataColumn<Data>): string | undefined {
  if (column.numeric) return 'numeric';
  if (column.text === 'long') return 'text long';
  return column.text ? 'text' : undefined;
}

interface DataRowProps<Data> {
  readonly row: Data;
  /** Place in the order shown, from 0. */
  readonly index: number;
  readonly columns: readonly DataColumn<Data>[];
  /** The unit that the row is about, if it is about one: it is marked with the unit's other places on the page. */
  readonly unit: string | undefined;
  readonly measure: ((row: HTMLTableRowElement | null) => void) | null;
  /** What stands under the row over all of its columns, if anything does. */
  readonly below: ReactNode;
}

/** One row of a table, its name as a row head. */
function Row<Data>({ row, index, columns, unit, measure, below }: DataRowProps<Data>) {
  useWriting();
  const cells = (
    <tr aria-rowindex={index + 2} data-index={index} data-unit={unit} ref={measure}>
      {columns.map((column) => {
        const content = column.cell?.(row) ?? plainCell(column.value(row), column.date ?? false);
        return column.rowHeader ? (
          <th key={column.id} scope="row">
            {content}
          </th>
        ) : (
          <td key={column.id} className={cellClass(column)}>
            {content}
          </td>
        );
      })}
    </tr>
  );
  if (below === null) return cells;
  return (
    <>
      {cells}
      <tr>
        <td colSpan={columns.length}>
          <div className="belowRow">{below}</div>
        </td>
      </tr>
    </>
  );
}

/** A row of a table, drawn anew only where it has changed: scrolling and measured heights change the table and not its rows. */
export const DataRow = memo(Row) as typeof Row;
