'use client';

import { useId, useState } from 'react';
import { counted } from '../words/counted';
import styles from './columnChoice.module.css';
import type { DataColumn } from './DataColumn';
import type { ShownColumns } from './useShownColumns';

interface ColumnChoiceProps<Data> {
  /** What the table is called: buttons of the same words are told apart by it. */
  readonly title: string;
  readonly columns: readonly DataColumn<Data>[];
  readonly choice: ShownColumns<Data>;
}

/** Which columns of a table are looked at: a button that opens a box to tick for each. */
export function ColumnChoice<Data>({ title, columns, choice }: ColumnChoiceProps<Data>) {
  const [isOpen, setOpen] = useState(false);
  const listId = useId();
  const { shown, toggle, showAll } = choice;
  const hidden = columns.length - shown.length;
  return (
    <div className={styles.choice}>
      <button
        type="button"
        aria-expanded={isOpen}
        aria-controls={isOpen ? listId : undefined}
        onClick={() => setOpen(!isOpen)}
      >
        Columns<span className="visuallyHidden">{` of ${title}`}</span>
        {hidden > 0 && ` (${counted(hidden, 'hidden', 'hidden')})`}
      </button>
      {isOpen && (
        <fieldset id={listId}>
          <legend>Columns shown; what is saved or copied has all of them</legend>
          {columns.map((column, place) => (
            <label key={column.id}>
              <input
                type="checkbox"
                checked={shown.includes(column)}
                disabled={place === 0}
                onChange={() => toggle(column.id)}
              />{' '}
              {column.header}
            </label>
          ))}
          <button type="button" disabled={hidden === 0} onClick={showAll}>
            All columns
          </button>
        </fieldset>
      )}
    </div>
  );
}
