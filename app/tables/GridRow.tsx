'use client';

import { type ClipboardEvent, type KeyboardEvent, useId } from 'react';
import { canonicalTable } from '../../lib/records/canonicalTables';
import type { JournalEntry } from '../../lib/records/decisions/Decision';
import type { EditedTable } from '../../lib/records/decisions/editedTables';
import { changedColumns, type DraftRow, mayEdit } from '../../lib/records/tables/tableDraft';
import { Written } from '../table/Written';
import { draftWords } from '../words/tableWords';
import { CellEditor, type Leave } from './GridCell';
import styles from './tables.module.css';

interface GridRowProps {
  readonly table: EditedTable;
  readonly row: DraftRow;
  readonly index: number;
  /** Column of the chosen cell, if it is in this row. */
  readonly chosen: number | null;
  /** Text that the editor of the chosen cell starts with; null while none is open. */
  readonly editing: string | null;
  readonly faults: ReadonlyMap<string, string> | undefined;
  readonly journal: readonly JournalEntry[];
  readonly busy: boolean;
  readonly measure: ((row: HTMLTableRowElement | null) => void) | null;
  /** @param start text to edit from; null for the focus only */
  readonly onChoose: (column: number, start: string | null) => void;
  readonly onKeyDown: (event: KeyboardEvent) => void;
  readonly onPaste: (event: ClipboardEvent) => void;
  readonly onDone: (text: string | null, leave: Leave | null) => void;
  readonly onRemove: (isRemoved: boolean) => void;
}

/** One row of the grid: cells that become inputs, what is to be done about them, and where the row comes from. */
export function GridRow(props: GridRowProps) {
  const { table, row, index, chosen, editing, faults, journal, busy, measure } = props;
  const id = useId();
  const { columns, key } = canonicalTable(table);
  const changed = new Set(changedColumns(row.texts, row.origin?.texts ?? {}));
  const name = key
    .map((one) => row.texts[one] ?? '')
    .filter((text) => text !== '')
    .join(' / ');
  return (
    <tr
      aria-rowindex={index + 2}
      data-index={index}
      ref={measure}
      className={row.isRemoved ? styles.removed : undefined}
    >
      {columns.map((column, at) => {
        const text = row.texts[column.name] ?? '';
        const fault = faults?.get(column.name);
        const isOpen = chosen === at && editing !== null;
        const classes = [column.kind === 'number' && 'numeric', changed.has(column.name) && styles.changed];
        const Cell = at === 0 ? 'th' : 'td';
        return (
          <Cell
            key={column.name}
            scope={at === 0 ? 'row' : undefined}
            className={classes.filter((one) => typeof one === 'string').join(' ') || undefined}
          >
            {isOpen ? (
              <CellEditor
                column={column}
                label={`${column.name} of row ${index + 1}`}
                start={editing}
                onDone={props.onDone}
              />
            ) : (
              <button
                type="button"
                className={styles.cell}
                data-place={`${index} ${at}`}
                tabIndex={chosen === at ? 0 : -1}
                aria-disabled={!mayEdit(row)}
                aria-describedby={fault === undefined ? undefined : `${id} ${at}`}
                onFocus={() => props.onChoose(at, null)}
                onClick={() => props.onChoose(at, text)}
                onKeyDown={props.onKeyDown}
                onPaste={props.onPaste}
              >
                <Written text={text} reason="empty" />
              </button>
            )}
            {fault !== undefined && (
              <span id={`${id} ${at}`} className={styles.fault}>
                {fault}
              </span>
            )}
          </Cell>
        );
      })}
      <td className={`value ${styles.source}`}>{draftWords(row, journal)}</td>
      <td>
        {row.origin?.isDerived !== true && (
          <button
            type="button"
            data-place={`${index} ${columns.length}`}
            tabIndex={chosen === columns.length ? 0 : -1}
            className={styles.remove}
            disabled={busy}
            onFocus={() => props.onChoose(columns.length, null)}
            onClick={() => props.onRemove(!row.isRemoved)}
            onKeyDown={props.onKeyDown}
          >
            {row.isRemoved ? 'Keep' : 'Remove'}
            <span className="visuallyHidden">{name === '' ? ` row ${index + 1}` : ` ${name}`}</span>
          </button>
        )}
      </td>
    </tr>
  );
}
