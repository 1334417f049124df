'use client';

import { useQuery } from '../address/useQuery';
import { useEngine } from '../engine/EngineProvider';
import { recordsSentence } from '../words/recordsSentence';
import { FileDrop } from './FileDrop';
import { FilesTable } from './FilesTable';
import { OpenButtons } from './OpenButtons';
import { ProblemsTable } from './ProblemsTable';

/** The Records page: the sums of what came in, the drop zone, and every file and held cell. */
export function RecordsPage() {
  const { state } = useEngine();
  const [query, change] = useQuery();
  const { outcome, fleet } = state;
  const failed = outcome !== null && !outcome.ok && outcome.files.length + outcome.problems.length > 0;
  const files = failed ? outcome.files : (fleet?.files ?? []);
  const problems = failed ? outcome.problems : (fleet?.problems ?? []);
  return (
    <>
      <p className="answer">{recordsSentence(state)}</p>
      <FileDrop />
      <OpenButtons />
      <h2>Files</h2>
      {failed && <p>These are the files of the attempt that failed; what was open before stays open.</p>}
      <FilesTable files={files} />
      <h2>Held and interpreted</h2>
      <ProblemsTable
        problems={problems}
        found={failed ? outcome.problemsFound : (fleet?.problemsFound ?? 0)}
        file={query.get('file') ?? ''}
        action={query.get('action') ?? ''}
        onChange={change}
      />
    </>
  );
}
