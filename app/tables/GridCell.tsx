'use client';

import { type KeyboardEvent, useRef, useState } from 'react';
import type { Column } from '../../lib/records/columns';
import styles from './tables.module.css';

/** Where the focus goes when an editor closes: on to a neighbouring cell, or nowhere. */
export type Leave = 'stay' | 'down' | 'right' | 'left';

interface CellEditorProps {
  readonly column: Column;
  readonly label: string;
  readonly start: string;
  /** Called once: with the text, or with null if it is to stay as it was. */
  readonly onDone: (text: string | null, leave: Leave | null) => void;
}

/** The input that a cell becomes: Enter and Tab keep the text and go on, Escape leaves it as it was. */
export function CellEditor({ column, label, start, onDone }: CellEditorProps) {
  const [text, setText] = useState(start);
  const isDone = useRef(false);
  const done = (kept: string | null, leave: Leave | null) => {
    if (isDone.current) return;
    isDone.current = true;
    onDone(kept, leave);
  };
  const press = (event: KeyboardEvent) => {
    event.stopPropagation();
    const leave: Leave | undefined = {
      Escape: 'stay' as const,
      Enter: 'down' as const,
      Tab: event.shiftKey ? ('left' as const) : ('right' as const),
    }[event.key];
    if (leave === undefined) return;
    event.preventDefault();
    done(event.key === 'Escape' ? null : text, leave);
  };
  const listId = column.choices === undefined ? undefined : 'choices-of-cell';
  return (
    <>
      <input
        // The cell became this input because someone asked to edit it.
        ref={(input) => input?.focus()}
        className={styles.editor}
        aria-label={label}
        value={text}
        list={listId}
        autoComplete="off"
        inputMode={column.kind === 'number' ? 'decimal' : undefined}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={press}
        onBlur={() => done(text, null)}
        onPaste={(event) => event.stopPropagation()}
      />
      {listId !== undefined && (
        <datalist id={listId}>
          {column.choices?.map((choice) => (
            <option key={choice} value={choice} />
          ))}
        </datalist>
      )}
    </>
  );
}
