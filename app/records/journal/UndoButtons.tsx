'use client';

import { useState } from 'react';
import type { FleetResult } from '../../../lib/analysis/types';
import { isAbout } from '../../../lib/records/decisions/acknowledgements';
import { isNoted, redoable, type Step, undoable } from '../../../lib/records/decisions/steps';
import { useEngine } from '../../engine/EngineProvider';
import { stepWords } from '../../words/stepWords';
import { useMayDecide } from '../../workspace/useKeptState';
import { tellOfJournal } from './journalNews';
import { useJournal } from './useJournal';
import { useUndoKeys } from './useUndoKeys';

type Way = 'undo' | 'redo';

interface UndoButtonsProps {
  readonly source: FleetResult['source'];
  /** Called when files are read again, since what was pressed may change its words. */
  readonly onStart: () => void;
  /** Ways back and forth between edits that are not applied yet: they come first, null where there is none. */
  readonly notApplied?: Readonly<Record<Way, (() => void) | null>>;
}

const noEdits = { undo: null, redo: null };

/** Undoes what was decided last about the data that are open, and does it again; also by the usual keys. */
export function UndoButtons({ source, onStart, notApplied = noEdits }: UndoButtonsProps) {
  const { start, request } = useEngine();
  const [failure, setFailure] = useState<string | null>(null);
  const journal = useJournal();
  const busy = !useMayDecide();
  const isEdited = notApplied.undo !== null;
  const steps: Readonly<Record<Way, Step | null>> = {
    undo: isEdited ? null : undoable(journal, source),
    redo: isEdited || notApplied.redo !== null ? null : redoable(journal, source),
  };
  const go = (way: Way) => {
    if (busy) return;
    setFailure(null);
    notApplied[way]?.();
    const step = steps[way];
    if (step === null) return;
    if (!isNoted(step)) {
      start(way, step.number);
      onStart();
      return;
    }
    request[way === 'undo' ? 'undoNotes' : 'redoNotes'](step.number).then(tellOfJournal, (error: unknown) =>
      setFailure(
        `The journal could not be written: ${error instanceof Error ? error.message : String(error)}`,
      ),
    );
  };
  useUndoKeys(go);
  const hasDecided = journal.some(({ decision }) => isAbout(decision, source));
  if (!hasDecided && !isEdited && notApplied.redo === null) return null;
  const words = (way: Way) => {
    if (notApplied[way] !== null) return 'edit not applied yet';
    return steps[way] === null ? null : stepWords(steps[way]);
  };
  const button = (way: Way, name: string) => (
    <button type="button" disabled={busy || words(way) === null} onClick={() => go(way)}>
      {name}
      {words(way) !== null && `: ${words(way)}`}
    </button>
  );
  return (
    <>
      <p className="buttons">
        {button('undo', 'Undo')}
        {button('redo', 'Redo')}
      </p>
      <p role="alert">{failure}</p>
    </>
  );
}
