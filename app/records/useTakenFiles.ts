'use client';

import { useCallback, useEffect, useState } from 'react';
import type { DroppedFile } from '../../lib/analysis/engine/EngineApi';
import { looksLikeWorkspace } from '../../lib/records/workspace/workspaceFile';
import { useEngine } from '../engine/EngineProvider';
import { mayAdd } from '../engine/engineState';
import { counted } from '../words/counted';
import { useMayWrite } from '../workspace/useKeptState';
import { droppedFiles } from './droppedFiles';

/** Takes files in and has them opened. */
export interface TakenFiles {
  /** Takes the files of a drop or of a picker. */
  readonly take: (event: Event) => Promise<void>;
  /** What became of the last ones, or null. */
  readonly message: string | null;
  /** Nothing can be taken now. */
  readonly isClosed: boolean;
}

/**
 * Takes dropped or chosen files in beside the own ones.
 *
 * @param onWorkspace is handed a workspace file; returns what to tell of it
 */
export function useTakenFiles(onWorkspace: (file: File) => string | null): TakenFiles {
  const { state, start } = useEngine();
  const [message, setMessage] = useState<string | null>(null);
  const mayWrite = useMayWrite();
  const busy = !mayAdd(state) || !mayWrite;
  // At the page's start it is not known yet whether own files are there, which these are to be added to.
  const isStarting = state.work?.behind === true && state.fleet === null;
  const isClosed = busy && !isStarting;
  const [waiting, setWaiting] = useState<readonly DroppedFile[] | null>(null);
  useEffect(() => {
    if (waiting === null || busy) return;
    setWaiting(null);
    // From here on the work speaks for itself.
    setMessage(null);
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
          setMessage(
            files.length > 1
              ? `${workspace.name} is a workspace file: drop it by itself.`
              : onWorkspace(new File([workspace.bytes], workspace.name)),
          );
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
  return { take, message, isClosed };
}
