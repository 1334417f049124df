'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import type { DroppedFile } from '../../lib/analysis/engine/EngineApi';
import { looksLikeWorkspace } from '../../lib/records/workspace/workspaceFile';
import { useEngine } from '../engine/EngineProvider';
import { mayAdd } from '../engine/engineState';
import { counted } from '../words/counted';
import { siteFleetName } from '../words/siteFleet';
import { useMayWrite } from '../workspace/useKeptState';
import { droppedFiles } from './droppedFiles';
import styles from './records.module.css';
import { usePageDrop } from './usePageDrop';

interface FileDropProps {
  readonly onWorkspace: (file: File) => void;
}

/** Where files and folders come in: dropped anywhere on the page, or chosen; a workspace file is handed on. */
export function FileDrop({ onWorkspace }: FileDropProps) {
  const { state, start } = useEngine();
  const [message, setMessage] = useState<string | null>(null);
  const filePicker = useRef<HTMLInputElement>(null);
  const folderPicker = useRef<HTMLInputElement>(null);
  const mayWrite = useMayWrite();
  const busy = !mayAdd(state) || !mayWrite;
  // At the page's start it is not known yet whether own files are there, which these are to be added to.
  const isStarting = state.work?.behind === true && state.fleet === null;
  const isClosed = busy && !isStarting;
  const [waiting, setWaiting] = useState<readonly DroppedFile[] | null>(null);
  useEffect(() => {
    if (waiting === null || busy) return;
    setWaiting(null);
    start('addFiles', waiting);
  }, [waiting, busy, start]);

  const take = useCallback(
    async (event: Event) => {
      if (isClosed) {
        setMessage(
          mayWrite
            ? 'Wait until the work under way ends, or stop it, and then add the files again.'
            : 'Nothing was added: this tab looks on, as is said above.',
        );
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
          if (files.length > 1) setMessage(`${workspace.name} is a workspace file: drop it by itself.`);
          else onWorkspace(new File([workspace.bytes], workspace.name));
          return;
        }
        setMessage(`${counted(files.length, 'file')} taken.`);
        setWaiting(files);
      } catch (error) {
        setMessage(error instanceof Error ? error.message : String(error));
      }
    },
    [isClosed, mayWrite, onWorkspace],
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
