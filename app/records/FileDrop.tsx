'use client';

import { useCallback, useRef, useState } from 'react';
import { looksLikeWorkspace } from '../../lib/records/workspace/workspaceFile';
import { useEngine } from '../engine/EngineProvider';
import { counted } from '../words/counted';
import { droppedFiles } from './droppedFiles';
import styles from './records.module.css';
import { usePageDrop } from './usePageDrop';

/** Where files and folders come in: dropped anywhere on the page, or chosen. */
export function FileDrop() {
  const { state, start } = useEngine();
  const [message, setMessage] = useState<string | null>(null);
  const filePicker = useRef<HTMLInputElement>(null);
  const folderPicker = useRef<HTMLInputElement>(null);
  const busy = state.work !== null;

  const take = useCallback(
    async (event: Event) => {
      if (busy) {
        setMessage('Wait until the work under way ends, or stop it, and then add the files again.');
        return;
      }
      try {
        const files = await droppedFiles(event);
        if (files.length === 0) {
          setMessage('There was no file in what was dropped or chosen.');
          return;
        }
        const workspace = files.find(({ bytes }) => looksLikeWorkspace(new Uint8Array(bytes)));
        if (workspace !== undefined) {
          setMessage(`${workspace.name} is a workspace file: open it under ‘Workspace’ below.`);
          return;
        }
        setMessage(`${counted(files.length, 'file')} taken.`);
        start('addFiles', files);
      } catch (error) {
        setMessage(error instanceof Error ? error.message : String(error));
      }
    },
    [start, busy],
  );
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
        them here. They are read in this browser: nothing leaves the machine. Your files take the place of the
        demo fleet and are kept in this browser until you remove them.
      </p>
      <p className="buttons">
        <button type="button" disabled={busy} onClick={() => filePicker.current?.click()}>
          Choose files
        </button>
        <button type="button" disabled={busy} onClick={() => folderPicker.current?.click()}>
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
