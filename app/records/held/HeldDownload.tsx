'use client';

import { useState } from 'react';
import { useEngine } from '../../engine/EngineProvider';
import { siteFleetName } from '../../words/siteFleet';
import { saveFile } from '../saveFile';

const fileName = 'held-rows.csv';

/** All held rows as a file, and how it is corrected and brought back. */
export function HeldDownload({ mayRule }: { readonly mayRule: boolean }) {
  const { state, request } = useEngine();
  const [message, setMessage] = useState<string | null>(null);
  const save = async () => {
    try {
      saveFile(fileName, await request.heldRows(), 'text/csv;charset=utf-8');
      setMessage(`Saved as ${fileName}.`);
    } catch (error) {
      setMessage(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <>
      <p>
        {mayRule
          ? 'A held row or cell is not used until somebody decides: rule on it here, or save the held rows as CSV and fill in ‘corrected’ (the right text) or ‘ruling’ (edit, release, leave out), and ‘why’, in a spreadsheet; then drop that file on this page. Nothing changes in your files: what was ruled is kept in this browser and can be taken back.'
          : `These are held rows of the ${siteFleetName()}, which stays as it is. Those of your own files can be ruled on here.`}
      </p>
      <p className="buttons">
        <button type="button" disabled={state.work !== null} onClick={() => void save()}>
          Save all held rows as CSV
        </button>
      </p>
      <p role="status" className="screenOnly">
        {message}
      </p>
    </>
  );
}
