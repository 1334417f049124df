'use client';

import { useEffect, useId, useRef } from 'react';
import type { UnderstoodSheet } from '../../../lib/analysis/types';
import type { MeaningDecision } from '../../../lib/records/decisions/Decision';
import { applyWords, previewSentence } from '../../words/previewWords';
import { ColumnsTable } from './ColumnsTable';
import { MeaningSelects } from './MeaningSelects';
import styles from './meanings.module.css';
import { PreviewTable } from './PreviewTable';
import { confirmed, useMeaningEdits } from './useMeaningEdits';
import { usePreview } from './usePreview';

interface MeaningsDialogProps {
  readonly sheet: UnderstoodSheet;
  /** How many other files have the same shape. */
  readonly others: number;
  readonly onApply: (decisions: readonly MeaningDecision[]) => void;
  /** After applying, too. */
  readonly onClose: () => void;
}

/** One screen on which a sheet's columns are corrected, with what comes of its first lines; Escape leaves all as it was. */
export function MeaningsDialog({ sheet, others, onApply, onClose }: MeaningsDialogProps) {
  const titleId = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useRef<HTMLHeadingElement>(null);
  const { edits, decisions, say } = useMeaningEdits(sheet);
  const { preview, isOld, message } = usePreview(sheet.file, decisions);
  useEffect(() => {
    const shown = dialog.current;
    shown?.showModal();
    // The first field would be scrolled to on a narrow screen, and the title with it out of sight.
    title.current?.focus();
    return () => shown?.close();
  }, []);
  const columns = preview?.sheet.columns ?? sheet.columns;
  const canApply = decisions.length > 0 && !isOld && preview !== null && preview.sheet.faults.length === 0;
  return (
    <dialog ref={dialog} aria-labelledby={titleId} className={styles.dialog} onClose={onClose}>
      <h2 id={titleId} ref={title} tabIndex={-1}>
        What the columns of {sheet.file} hold
      </h2>
      <div className={styles.panes}>
        <ColumnsTable
          caption="Columns in the order of the file: choose what each is read as"
          columns={columns}
          samples={sheet.samples}
          isChanged={({ index }) => isOld && edits.has(index)}
          readAs={(column) => (
            <MeaningSelects
              column={column}
              said={edits.get(column.index) ?? column}
              characteristics={sheet.characteristics}
              onSay={(said) => say(column.index, said)}
            />
          )}
        />
        <div className={styles.pane}>
          <p role="status">
            {message ?? (isOld || preview === null ? 'The preview is being read.' : previewSentence(preview))}
          </p>
          {preview !== null && <PreviewTable preview={preview} />}
        </div>
      </div>
      <p className="buttons">
        <button
          type="button"
          disabled={!canApply}
          onClick={() => {
            // Closed first: the focus that the page sets on applying would go back to the opening button.
            dialog.current?.close();
            onApply(confirmed(sheet, columns, decisions));
          }}
        >
          {applyWords(others)}
        </button>
        <button type="button" onClick={() => dialog.current?.close()}>
          Cancel
        </button>
        <span>What is shown above holds for every file with these columns, until it is taken back.</span>
      </p>
    </dialog>
  );
}
