'use client';

import { useCallback, useRef } from 'react';
import { useEngine } from '../engine/EngineProvider';
import { siteFleetName } from '../words/siteFleet';
import styles from './records.module.css';
import { usePageDrop } from './usePageDrop';
import { useTakenFiles } from './useTakenFiles';

interface FileDropProps {
  readonly onWorkspace: (file: File) => void;
}

/** Where files and folders come in: dropped anywhere on the page, or chosen; a workspace file is handed on. */
export function FileDrop({ onWorkspace }: FileDropProps) {
  const { state } = useEngine();
  const filePicker = useRef<HTMLInputElement>(null);
  const folderPicker = useRef<HTMLInputElement>(null);
  const handOn = useCallback(
    (file: File) => {
      onWorkspace(file);
      return null;
    },
    [onWorkspace],
  );
  const { take, message, isClosed } = useTakenFiles(handOn);
  const dragging = usePageDrop(take);
  const chosen = (input: HTMLInputElement, event: Event) => {
    void take(event).finally(() => {
      input.value = '';
    });
  };
  return (
    <section className={dragging ? `${styles.drop} ${styles.dragging}` : styles.drop} aria-label="Add files">
      <p>
        <strong>Drop your workshops’ CSV exports or whole folders anywhere on this page</strong>, or choose
        them here. They are read in this browser: nothing leaves the machine.{' '}
        {state.fleet?.source === 'own'
          ? 'They come beside your files that are open; one of the same name takes the place of that one.'
          : `Your files take the place of the ${siteFleetName()}.`}{' '}
        They are kept in this browser until you remove them.
      </p>
      <p className="buttons">
        <button type="button" disabled={isClosed} onClick={() => filePicker.current?.click()}>
          Choose files
        </button>
        <button type="button" disabled={isClosed} onClick={() => folderPicker.current?.click()}>
          Choose a folder
        </button>
      </p>
      <input
        ref={filePicker}
        type="file"
        multiple
        hidden
        aria-label="Files"
        onChange={(event) => chosen(event.currentTarget, event.nativeEvent)}
      />
      <input
        ref={(input) => {
          folderPicker.current = input;
          input?.setAttribute('webkitdirectory', '');
        }}
        type="file"
        multiple
        hidden
        aria-label="Folder"
        onChange={(event) => chosen(event.currentTarget, event.nativeEvent)}
      />
      <p role="status">{message}</p>
    </section>
  );
}
