'use client';

import Link from 'next/link';
import { useEffect, useRef, useState } from 'react';
import { benchFiles } from '../../lib/analysis/bench/benchFiles';
import type { BenchChecks, BenchEntry, BenchSheet } from '../../lib/analysis/bench/types';
import type { FleetResult } from '../../lib/analysis/types';
import { unitAddress } from '../address/unitAddress';
import { useEngine } from '../engine/EngineProvider';
import { ConfirmDialog } from '../records/ConfirmDialog';
import { saveFile } from '../records/saveFile';
import { entryFaultWords } from '../words/benchEntryWords';
import { counted } from '../words/counted';
import { siteFleetName } from '../words/siteFleet';
import { useMayWrite } from '../workspace/useKeptState';
import { FileButtons } from './FileButtons';
import type { TypedEntry } from './useEntry';

interface SavePanelProps {
  readonly fleet: FleetResult;
  readonly sheet: BenchSheet;
  readonly typed: TypedEntry & { readonly entry: BenchEntry };
  readonly checks: BenchChecks | null;
  /** Called with what was said of the overhaul before it was saved, which stays in sight; null when it is left. */
  readonly onSaved: (checks: BenchChecks | null) => void;
}

/** Saving what was typed: among the own files, as canonical CSV, or not at all. */
export function SavePanel({ fleet, sheet, typed, checks, onSaved }: SavePanelProps) {
  const { state, start } = useEngine();
  const mayWrite = useMayWrite();
  const dialog = useRef<HTMLDialogElement>(null);
  const [pending, setPending] = useState<readonly string[] | null>(null);
  const { entry, discard, forget } = typed;
  const needed = (checks?.entryFaults ?? []).filter(({ kind }) => kind === 'needed');
  const isReady = checks !== null && needed.length === 0;
  const busy = state.work !== null;
  const files = () => benchFiles(sheet.unit, sheet.items, entry);
  const isSaved =
    pending !== null && !busy && pending.every((name) => fleet.files.some(({ file }) => file === name));
  useEffect(() => {
    if (pending !== null && !busy && !isSaved && state.outcome?.ok === false) {
      setPending(null);
      onSaved(null);
    }
  }, [pending, busy, isSaved, state.outcome, onSaved]);
  useEffect(() => {
    if (isSaved) forget();
  }, [isSaved, forget]);
  const save = () => {
    const made = files();
    setPending(made.map(({ name }) => name));
    onSaved(checks);
    start(
      'addFiles',
      made.map(({ name, text }) => ({ name, bytes: new TextEncoder().encode(text).buffer })),
    );
  };
  const leave = (then: () => void) => {
    setPending(null);
    onSaved(null);
    then();
  };
  return (
    <section aria-label="Saving">
      <h2 className="screenOnly">Saving</h2>
      {isSaved ? (
        <p role="status">
          Saved: the overhaul is among your files as {pending.join(' and ')}, and in the{' '}
          <Link href={unitAddress(entry.unit)}>history of {entry.unit}</Link>. Saved again for the same day it
          takes its own place.
        </p>
      ) : (
        <p role="status" className="screenOnly">
          {isReady
            ? `${counted(checks.readings, 'reading')} typed. What is typed stays in this browser until it is saved or discarded.`
            : needed.map(entryFaultWords).join(' ')}
        </p>
      )}
      {fleet.source === 'demo' && (
        <p className="screenOnly">
          The {siteFleetName()} is not changed: save the overhaul as CSV, or open your own files on the{' '}
          <Link href="/records/">Records page</Link> first.
        </p>
      )}
      <p className="buttons">
        {fleet.source === 'own' && !isSaved && (
          <button type="button" disabled={!isReady || busy || !mayWrite} onClick={save}>
            Save in my files
          </button>
        )}
        {isSaved && (
          <>
            <button type="button" onClick={() => leave(discard)}>
              Clear the sheet
            </button>
            <button
              type="button"
              disabled={!mayWrite}
              onClick={() => leave(() => start('removeFiles', pending))}
            >
              Take the overhaul out again
            </button>
          </>
        )}
        <FileButtons
          isReady={isReady}
          files={files}
          onSave={(file) => saveFile(file.name, file.text, 'text/csv')}
        />
        {!isSaved && (
          <button type="button" onClick={() => dialog.current?.showModal()}>
            Discard what was typed
          </button>
        )}
      </p>
      <ConfirmDialog
        dialog={dialog}
        title="Discard what was typed?"
        confirm="Discard it"
        onConfirm={() => leave(discard)}
      >
        <p>Everything typed about this overhaul of {entry.unit} is removed from this browser.</p>
      </ConfirmDialog>
    </section>
  );
}
