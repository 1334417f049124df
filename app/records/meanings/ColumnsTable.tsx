import { type ReactNode, useId } from 'react';
import type { ColumnMeaning, UnderstoodSheet } from '../../../lib/analysis/types';
import { ScrollBox } from '../../table/ScrollBox';
import { Written } from '../../table/Written';
import { surenessWords } from '../../words/columnWords';
import styles from './meanings.module.css';

interface ColumnsTableProps {
  readonly caption: string;
  readonly columns: readonly ColumnMeaning[];
  readonly samples: UnderstoodSheet['samples'];
  /** Columns that are changed and not read again yet. */
  readonly isChanged: (column: ColumnMeaning) => boolean;
  readonly readAs: (column: ColumnMeaning) => ReactNode;
}

/** Columns of a sheet in its order: name, first values, what it is read as, how surely and by which evidence. */
export function ColumnsTable({ caption, columns, samples, isChanged, readAs }: ColumnsTableProps) {
  const captionId = useId();
  return (
    <ScrollBox labelledBy={captionId}>
      <table className={styles.columns}>
        <caption id={captionId}>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Name in the file</th>
            <th scope="col">First values</th>
            <th scope="col">Read as</th>
            <th scope="col">How sure</th>
            <th scope="col">Evidence</th>
          </tr>
        </thead>
        <tbody>
          {[...columns]
            .sort((a, b) => a.index - b.index)
            .map((column) => (
              <tr key={column.index}>
                <th scope="row">
                  <span className={styles.name}>
                    <Written text={column.name} reason="the column has no name" />
                  </span>
                </th>
                <td>
                  <span className={styles.samples}>
                    <Written text={(samples[column.index] ?? []).join(' · ')} reason="the column is empty" />
                  </span>
                </td>
                <td>{readAs(column)}</td>
                <td>{isChanged(column) ? 'changed' : surenessWords(column.sureness)}</td>
                <td className={styles.evidence}>
                  {isChanged(column) ? (
                    'not applied yet'
                  ) : (
                    <Written text={column.evidence} reason="nothing speaks for a use" />
                  )}
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
