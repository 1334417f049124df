'use client';

import { useCallback, useEffect, useRef, useState } from 'react';
import type { WorkspaceOffer } from '../../lib/analysis/engine/workspace/WorkspaceOffer';
import { useEngine } from '../engine/EngineProvider';
import { mayAdd } from '../engine/engineState';
import { OfferedWorkspacePanel } from './OfferedWorkspacePanel';
import { useMayWrite } from './useKeptState';

interface Chosen {
  readonly file: File;
  readonly offer: WorkspaceOffer | null;
}

/** A workspace file in: read first, then opened in place of what is here or merged with it. */
export function OpenWorkspace({ dropped }: { readonly dropped: File | null }) {
  const { state, start, request } = useEngine();
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [passphrase, setPassphrase] = useState('');
  const [message, setMessage] = useState<string | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  const mayWrite = useMayWrite();
  const busy = !mayAdd(state) || !mayWrite;
  const read = useCallback(
    async (file: File, typed: string) => {
      setMessage(`${file.name} is being read.`);
      setChosen({ file, offer: null });
      try {
        const offer = await request.offerWorkspace(await file.arrayBuffer(), typed);
        setChosen(offer.status === 'refused' ? null : { file, offer });
        setMessage(offer.status === 'offered' ? null : `${file.name}: ${offer.message}`);
      } catch (error) {
        setChosen(null);
        setMessage(`${file.name} was not read: ${error instanceof Error ? error.message : String(error)}`);
      }
    },
    [request],
  );
  const take = useCallback(
    (file: File) => {
      setPassphrase('');
      void read(file, '');
      opener.current?.scrollIntoView({ block: 'center' });
    },
    [read],
  );
  useEffect(() => {
    if (dropped !== null) take(dropped);
  }, [dropped, take]);
  const offer = chosen?.offer ?? null;
  return (
    <>
      <p className="buttons">
        <button ref={opener} type="button" disabled={busy} onClick={() => picker.current?.click()}>
          Open a workspace file
        </button>
      </p>
      <input
        ref={picker}
        type="file"
        hidden
        aria-label="Workspace file"
        onChange={(event) => {
          const [file] = event.currentTarget.files ?? [];
          event.currentTarget.value = '';
          if (file !== undefined) take(file);
        }}
      />
      <p role="status" className="screenOnly">
        {message}
      </p>
      {chosen !== null && offer?.status === 'sealed' && (
        <form
          className="controls"
          onSubmit={(event) => {
            event.preventDefault();
            void read(chosen.file, passphrase);
          }}
        >
          <label>
            Passphrase of {chosen.file.name}
            <input
              type="password"
              autoComplete="off"
              value={passphrase}
              onChange={(event) => setPassphrase(event.target.value)}
            />
          </label>
          <button type="submit">Unseal</button>
        </form>
      )}
      {chosen !== null && offer?.status === 'offered' && (
        <OfferedWorkspacePanel
          name={chosen.file.name}
          offer={offer}
          busy={busy}
          onOpen={(choice) => {
            setChosen(null);
            start('openWorkspace', choice);
          }}
          onLeave={() => setChosen(null)}
        />
      )}
    </>
  );
}
