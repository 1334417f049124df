'use client';

import { useRef, useState } from 'react';
import type { UnderstoodSheet } from '../../lib/analysis/types';
import type { Decision } from '../../lib/records/decisions/Decision';
import { decisionsInForce } from '../../lib/records/decisions/journal';
import {
  largestSavedFile_bytes,
  readSavedDecisions,
  savedDecisions,
} from '../../lib/records/decisions/savedDecisions';
import { useEngine } from '../engine/EngineProvider';
import { counted } from '../words/counted';
import { useMayWrite } from '../workspace/useKeptState';
import { saveFile } from './saveFile';

const fileName = 'endfloat-answers.json';

interface SavedAnswersProps {
  readonly sheets: readonly UnderstoodSheet[];
  readonly onOpen: (decisions: readonly Decision[]) => void;
}

async function decisionsIn(file: File): Promise<readonly Decision[]> {
  if (file.size > largestSavedFile_bytes)
    throw new Error('This is not a file of saved answers: it is larger than any of them can be.');
  const decisions = readSavedDecisions(await file.text());
  if (decisions.length === 0) throw new Error('It holds no answer and no column meaning.');
  return decisions;
}

/** Answers and column meanings out to a file and in from one, to share them or to use them with the next files. */
export function SavedAnswers({ sheets, onOpen }: SavedAnswersProps) {
  const { state, request } = useEngine();
  const [message, setMessage] = useState<string | null>(null);
  const picker = useRef<HTMLInputElement>(null);
  const mayWrite = useMayWrite();
  const busy = state.work !== null;
  const save = async () => {
    const decisions = decisionsInForce(await request.journal()).filter(
      ({ kind }) => kind === 'answer' || kind === 'meaning',
    );
    if (decisions.length === 0) {
      setMessage('There is nothing to save: no question was answered and no column corrected.');
      return;
    }
    saveFile(fileName, savedDecisions(decisions, sheets), 'application/json');
    setMessage(
      `${counted(decisions.length, 'answer or meaning', 'answers and meanings')} saved in ${fileName}.`,
    );
  };
  const open = async (input: HTMLInputElement) => {
    const [file] = input.files ?? [];
    if (file === undefined) return;
    try {
      const decisions = await decisionsIn(file);
      setMessage(
        `${counted(decisions.length, 'answer or meaning', 'answers and meanings')} taken from ${file.name}.`,
      );
      onOpen(decisions);
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      setMessage(`${file.name} was not taken. ${reason}`);
    } finally {
      input.value = '';
    }
  };
  return (
    <>
      <p className="buttons">
        <button type="button" disabled={busy} onClick={() => void save()}>
          Save answers and column meanings
        </button>
        <button type="button" disabled={busy || !mayWrite} onClick={() => picker.current?.click()}>
          Open saved answers
        </button>
      </p>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label="Saved answers"
        onChange={(event) => void open(event.currentTarget)}
      />
      <p role="status" className="screenOnly">
        {message}
      </p>
    </>
  );
}
