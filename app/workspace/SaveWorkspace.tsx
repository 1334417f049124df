'use client';

import { useId, useState } from 'react';
import { useEngine } from '../engine/EngineProvider';
import { saveFile } from '../records/saveFile';

/** All own files and decisions as one file, sealed with a passphrase if one is given. */
export function SaveWorkspace() {
  const { state, request } = useEngine();
  const [passphrase, setPassphrase] = useState('');
  const [again, setAgain] = useState('');
  const [message, setMessage] = useState<string | null>(null);
  const [saving, setSaving] = useState(false);
  const hint = useId();
  const save = async () => {
    if (passphrase !== again) {
      setMessage('Not saved: the passphrase was not typed twice alike.');
      return;
    }
    setSaving(true);
    try {
      const bytes = await request.saveWorkspace(passphrase);
      const name = `overhauls-${new Date().toISOString().slice(0, 10)}.workspace`;
      saveFile(name, new Uint8Array(bytes), 'application/octet-stream');
      setMessage(`Saved as ${name}${passphrase === '' ? '' : ', sealed with your passphrase'}.`);
      setPassphrase('');
      setAgain('');
    } catch (error) {
      setMessage(`Not saved: ${error instanceof Error ? error.message : String(error)}`);
    } finally {
      setSaving(false);
    }
  };
  return (
    <form
      aria-label="Save the workspace"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <details>
        <summary>Seal it with a passphrase</summary>
        <p id={hint}>
          A sealed file can be opened with the passphrase only, also by a colleague. It is kept nowhere:
          without it nobody can open the file again.
        </p>
        <p className="controls">
          <label>
            Passphrase
            <input
              type="password"
              autoComplete="new-password"
              aria-describedby={hint}
              value={passphrase}
              onChange={(event) => setPassphrase(event.target.value)}
            />
          </label>
          <label>
            Passphrase again
            <input
              type="password"
              autoComplete="new-password"
              value={again}
              onChange={(event) => setAgain(event.target.value)}
            />
          </label>
        </p>
      </details>
      <p className="buttons">
        <button type="submit" disabled={saving || state.work !== null}>
          Save the workspace file
        </button>
      </p>
      <p role="status" className="screenOnly">
        {message}
      </p>
    </form>
  );
}
