'use client';

import { type ReactNode, type RefObject, useId } from 'react';
import styles from './records.module.css';

interface ConfirmDialogProps {
  readonly dialog: RefObject<HTMLDialogElement | null>;
  readonly title: string;
  readonly confirm: string;
  readonly onConfirm: () => void;
  readonly children: ReactNode;
}

/** A question before something that cannot be undone; Escape and 'Keep' leave everything as it is. */
export function ConfirmDialog({ dialog, title, confirm, onConfirm, children }: ConfirmDialogProps) {
  const titleId = useId();
  return (
    <dialog
      ref={dialog}
      aria-labelledby={titleId}
      className={styles.dialog}
      onClose={(event) => {
        if (event.currentTarget.returnValue === 'confirm') onConfirm();
        event.currentTarget.returnValue = '';
      }}
    >
      <form method="dialog">
        <h2 id={titleId}>{title}</h2>
        {children}
        <p className="buttons">
          <button type="submit" value="keep">
            Keep them
          </button>
          <button type="submit" value="confirm">
            {confirm}
          </button>
        </p>
      </form>
    </dialog>
  );
}
