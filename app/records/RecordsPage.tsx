'use client';

import { useRef } from 'react';
import { builtInCharacteristics } from '../../lib/records/characteristics';
import { useQuery } from '../address/useQuery';
import { useEngine } from '../engine/EngineProvider';
import { recordsSentence } from '../words/recordsSentence';
import { AnswersGiven } from './AnswersGiven';
import { FileDrop } from './FileDrop';
import { FilesTable } from './FilesTable';
import { OpenButtons } from './OpenButtons';
import { ProblemsTable } from './ProblemsTable';
import { Questions } from './Questions';
import { UnderstoodSheets } from './UnderstoodSheets';

const nothing = { files: [], problems: [], problemsFound: 0, questions: [], sheets: [] };

/** The Records page: the sums of what came in, the drop zone, what is asked, and every file and held cell. */
export function RecordsPage() {
  const { state, decide, takeBack } = useEngine();
  const [query, change] = useQuery();
  const sentence = useRef<HTMLParagraphElement>(null);
  const { attempt, fleet, work } = state;
  const read = attempt ?? fleet ?? nothing;
  const busy = work !== null;
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
      <FileDrop />
      <Questions
        questions={read.questions}
        busy={busy}
        onApply={(answers) => andReturn(() => decide(answers))}
      />
      {(attempt !== null || fleet?.source === 'own') && (
        <AnswersGiven onTakeBack={(ids) => andReturn(() => takeBack(ids))} />
      )}
      <OpenButtons />
      <h2>Files</h2>
      {attempt !== null && (
        <p>These are the files of the attempt that failed; what was open before stays open.</p>
      )}
      <FilesTable files={read.files} />
      <UnderstoodSheets
        sheets={read.sheets}
        characteristics={[...(fleet?.characteristics ?? []), ...builtInCharacteristics]}
      />
      <h2>Held and interpreted</h2>
      <ProblemsTable
        problems={read.problems}
        found={read.problemsFound}
        file={query.get('file') ?? ''}
        action={query.get('action') ?? ''}
        onChange={change}
      />
    </>
  );
}
