'use client';

import { useEffect, useRef, useState } from 'react';
import { forgetOwnEntries } from '../bench/keptEntry';
import { useEngine } from '../engine/EngineProvider';
import { mayAdd } from '../engine/engineState';
import { forgetLastPicture } from '../fleet/lastPicture';
import { counted } from '../words/counted';
import { siteFleetName } from '../words/siteFleet';
import { useKept, useMayWrite } from '../workspace/useKeptState';
import { ConfirmDialog } from './ConfirmDialog';

/** Switching between the demo fleet and the files kept in this browser, and removing those. */
export function OpenButtons() {
  const { state, start, request } = useEngine();
  const [names, setNames] = useState<readonly string[]>([]);
  const dialog = useRef<HTMLDialogElement>(null);
  const { fleet } = state;
  const mayWrite = useMayWrite();
  const isSaved = useKept().state?.saving !== 'not saved';
  const busy = !mayAdd(state);
  useEffect(() => {
    if (busy) return;
    let stale = false;
    request.ownFileNames().then(
      (found) => !stale && setNames(found),
      () => !stale && setNames([]),
    );
    return () => {
      stale = true;
    };
  }, [request, busy]);
  const kept = names.length > 0;
  return (
    <>
      <p className="buttons">
        {fleet?.source === 'own' && (
          <button type="button" disabled={busy} onClick={() => start('openDemo')}>
            Open the {siteFleetName()}
          </button>
        )}
        {kept && fleet?.source !== 'own' && (
          <button type="button" disabled={busy} onClick={() => start('openOwn')}>
            Open my files again
          </button>
        )}
        {kept && (
          <button type="button" disabled={busy || !mayWrite} onClick={() => dialog.current?.showModal()}>
            Remove my files from this browser
          </button>
        )}
      </p>
      {kept && (
        <p>
          {counted(names.length, 'file')} of yours {names.length === 1 ? 'is' : 'are'}{' '}
          {isSaved ? 'kept in this browser' : 'held until the page is closed'}.
        </p>
      )}
      <ConfirmDialog
        dialog={dialog}
        title="Remove your files from this browser?"
        confirm="Remove my files"
        onConfirm={() => {
          // At once: the page may be closed before the demo fleet is open.
          forgetLastPicture();
          // A browser that keeps nothing has no entries either.
          forgetOwnEntries().catch(() => {});
          start('forgetOwn');
        }}
      >
        <p>
          {counted(names.length, 'file')} and everything read from {names.length === 1 ? 'it' : 'them'} and
          what was typed on the Bench and not saved will be removed from this browser, and the{' '}
          {siteFleetName()} opened. The files on your disk stay as they are.
        </p>
      </ConfirmDialog>
    </>
  );
}
