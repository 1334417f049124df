'use client';

import { type ClipboardEvent, type KeyboardEvent, useEffect, useId, useMemo, useRef, useState } from 'react';
import { canonicalTable } from '../../lib/records/canonicalTables';
import type { JournalEntry } from '../../lib/records/decisions/Decision';
import type { EditedTable } from '../../lib/records/decisions/editedTables';
import { blockOf, withBlock } from '../../lib/records/tables/pastedBlock';
import { type Draft, faultsOf, mayEdit, withCell, withRemoved } from '../../lib/records/tables/tableDraft';
import { ScrollBox } from '../table/ScrollBox';
import { Spacer } from '../table/Spacer';
import { useRowWindow } from '../table/useRowWindow';
import { pastedSentence } from '../words/tableWords';
import type { Leave } from './GridCell';
import { GridRow } from './GridRow';
import { type Place, placeAfter, within } from './gridPlace';

interface EditGridProps {
  readonly table: EditedTable;
  readonly caption: string;
  readonly draft: Draft;
  readonly journal: readonly JournalEntry[];
  readonly busy: boolean;
  readonly onChange: (draft: Draft) => void;
}

const moves: Readonly<Record<Leave, readonly [rows: number, columns: number]>> = {
  stay: [0, 0],
  down: [1, 0],
  right: [0, 1],
  left: [0, -1],
};

/** A table to be edited wholly by keyboard: arrows move, Enter or F2 edits, Escape leaves, a pasted block goes in from the cell on. */
export function EditGrid({ table, caption, draft, journal, busy, onChange }: EditGridProps) {
  const captionId = useId();
  const box = useRef<HTMLDivElement>(null);
  const { columns } = canonicalTable(table);
  const [chosen, setChosen] = useState<Place>({ row: 0, column: 0 });
  /** Text that the editor of the chosen cell starts with; null while none is open. */
  const [editing, setEditing] = useState<string | null>(null);
  const [pasted, setPasted] = useState<string | null>(null);
  const wantsFocus = useRef(false);
  // One column more: the button that removes the row.
  const across = columns.length + 1;
  const place = within(chosen, draft.length, across);
  const view = useRowWindow(draft.length, box);
  const faults = useMemo(() => faultsOf(table, draft), [table, draft]);
  useEffect(() => {
    if (!wantsFocus.current || editing !== null) return;
    wantsFocus.current = false;
    box.current?.querySelector<HTMLElement>(`[data-place="${place.row} ${place.column}"]`)?.focus();
  });
  const goTo = (next: Place) => {
    wantsFocus.current = true;
    setChosen(within(next, draft.length, across));
  };
  const row = draft[place.row];
  const column = columns[place.column];
  const edit = (start: string) => {
    if (!busy && row !== undefined && column !== undefined && mayEdit(row)) setEditing(start);
  };
  const change = (text: string) => {
    if (row !== undefined && column !== undefined && (row.texts[column.name] ?? '') !== text)
      onChange(withCell(draft, row.id, column.name, text));
  };
  const press = (event: KeyboardEvent) => {
    const { key } = event;
    const isPlain = !event.ctrlKey && !event.metaKey && !event.altKey;
    const next = isPlain ? placeAfter(key, place, draft.length, across) : null;
    if (next !== null) goTo(next);
    else if (column === undefined || !isPlain) return;
    else if (key === 'F2') edit(row?.texts[column.name] ?? '');
    else if (key === 'Delete' || key === 'Backspace') busy || change('');
    else if (key.length === 1 && key !== ' ') edit(key);
    else return;
    event.preventDefault();
  };
  const paste = (event: ClipboardEvent) => {
    if (busy || column === undefined) return;
    event.preventDefault();
    const block = blockOf(event.clipboardData.getData('text/plain'));
    const { draft: next, notFitting } = withBlock(table, draft, place, block);
    setPasted(pastedSentence(block.flat().length - notFitting.length, notFitting));
    onChange(next);
  };
  return (
    <>
      <ScrollBox box={box} labelledBy={captionId} rows={draft.length}>
        <table aria-rowcount={draft.length + 1}>
          <caption id={captionId}>{caption}</caption>
          <thead>
            <tr aria-rowindex={1}>
              {columns.map(({ name, kind, unit, description }) => (
                <th
                  key={name}
                  scope="col"
                  title={description}
                  className={kind === 'number' ? 'numeric' : undefined}
                >
                  {name}
                  {unit !== undefined && `, ${unit}`}
                </th>
              ))}
              <th scope="col">Source of the row</th>
              <th scope="col">Remove</th>
            </tr>
          </thead>
          <Spacer height_px={view.before} />
          <tbody>
            {view.indexes.map((index) => {
              const shown = draft[index];
              if (shown === undefined) return null;
              return (
                <GridRow
                  key={shown.id}
                  table={table}
                  row={shown}
                  index={index}
                  chosen={place.row === index ? place.column : null}
                  editing={place.row === index ? editing : null}
                  faults={faults.get(shown.id)}
                  journal={journal}
                  busy={busy}
                  measure={view.measure}
                  onChoose={(at, start) => {
                    if (place.row !== index || place.column !== at) setChosen({ row: index, column: at });
                    if (start !== null && !busy && mayEdit(shown)) setEditing(start);
                  }}
                  onKeyDown={press}
                  onPaste={paste}
                  onDone={(text, leave) => {
                    setEditing(null);
                    if (text !== null) change(text);
                    if (leave !== null)
                      goTo({ row: place.row + moves[leave][0], column: place.column + moves[leave][1] });
                  }}
                  onRemove={(isRemoved) => onChange(withRemoved(draft, shown.id, isRemoved))}
                />
              );
            })}
          </tbody>
          <Spacer height_px={view.after} />
        </table>
      </ScrollBox>
      <p role="status">{pasted}</p>
    </>
  );
}
