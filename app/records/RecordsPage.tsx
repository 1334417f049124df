'use client';

import Link from 'next/link';
import { useRef, useState } from 'react';
import { useQuery } from '../address/useQuery';
import { useEngine } from '../engine/EngineProvider';
import { recordsSentence } from '../words/recordsSentence';
import { useMayDecide } from '../workspace/useKeptState';
import { WorkspacePanel } from '../workspace/WorkspacePanel';
import { DecisionsInForce } from './DecisionsInForce';
import { FileDrop } from './FileDrop';
import { FilesTable } from './FilesTable';
import { Journal } from './journal/Journal';
import { UndoButtons } from './journal/UndoButtons';
import { OpenButtons } from './OpenButtons';
import { ProblemsTable } from './ProblemsTable';
import { Questions } from './Questions';
import { SavedAnswers } from './SavedAnswers';
import { UnderstoodSheets } from './UnderstoodSheets';

const nothing = { files: [], problems: [], problemsFound: 0, questions: [], sheets: [] };

/** The Records page: the sums of what came in, the drop zone, what is asked, and every file and held cell. */
export function RecordsPage() {
  const { state, start } = useEngine();
  const [query, change] = useQuery();
  const [workspace, setWorkspace] = useState<File | null>(null);
  const sentence = useRef<HTMLParagraphElement>(null);
  const { attempt, fleet } = state;
  const read = attempt ?? fleet ?? nothing;
  const busy = !useMayDecide();
  const isOwn = attempt !== null || fleet?.source === 'own';
  // What was pressed may be gone when the work ends: the sentence stays, next to the news of the work.
  const andReturn = (start: () => void) => {
    start();
    sentence.current?.focus();
  };
  return (
    <>
      <p className="answer" ref={sentence} tabIndex={-1}>
        {recordsSentence(state)}
      </p>
      <FileDrop onWorkspace={setWorkspace} />
      <Questions
        questions={read.questions}
        busy={busy}
        onApply={(answers) => andReturn(() => start('decide', answers))}
      />
      <UndoButtons source={isOwn ? 'own' : 'demo'} onStart={() => sentence.current?.focus()} />
      {isOwn && <DecisionsInForce onTakeBack={(ids) => andReturn(() => start('takeBack', ids))} />}
      <SavedAnswers
        sheets={read.sheets}
        onOpen={(decisions) => andReturn(() => start('decide', decisions))}
      />
      <OpenButtons />
      <WorkspacePanel dropped={workspace} />
      <p className="screenOnly">
        <Link href="/example/">From file to order</Link> shows what becomes of these rows.
      </p>
      <h2>Files</h2>
      {attempt !== null && (
        <p>These are the files of the attempt that failed; what was open before stays open.</p>
      )}
      <FilesTable files={read.files} />
      <UnderstoodSheets
        sheets={read.sheets}
        busy={busy}
        onApply={(decisions) => andReturn(() => start('decide', decisions))}
      />
      <h2>Held and interpreted</h2>
      <ProblemsTable
        problems={read.problems}
        found={read.problemsFound}
        filter={{
          file: query.get('file') ?? '',
          action: query.get('action') ?? '',
          column: query.get('column') ?? '',
          reason: query.get('reason') ?? '',
        }}
        onChange={change}
        mayRule={isOwn}
        busy={busy}
        onApply={(rulings) => andReturn(() => start('decide', rulings))}
      />
      <Journal source={isOwn ? 'own' : 'demo'} />
    </>
  );
}
