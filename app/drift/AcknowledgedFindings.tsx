'use client';

import { useState } from 'react';
import type { DriftResult } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { counted } from '../words/counted';
import { driftWords, findingName } from '../words/driftSentence';
import { useMayWrite } from '../workspace/useKeptState';
import type { Acknowledgements } from './useAcknowledgements';

interface AcknowledgedFindingsProps {
  readonly result: DriftResult;
  readonly acknowledged: Acknowledgements;
  readonly characteristics: FleetResult['characteristics'];
}

/** Findings that a person has acknowledged, with the remark and a way back. */
export function AcknowledgedFindings({ result, acknowledged, characteristics }: AcknowledgedFindingsProps) {
  const mayWrite = useMayWrite();
  const [failure, setFailure] = useState<string | null>(null);
  const takeBack = (id: string) => {
    acknowledged
      .takeBack(id)
      .then(() => setFailure(null))
      .catch((error: unknown) =>
        setFailure(`It was not taken back: ${error instanceof Error ? error.message : String(error)}`),
      );
  };
  const findings = result.findings.flatMap((finding) => {
    const decision = acknowledged.of(finding);
    return decision === null ? [] : [{ finding, decision }];
  });
  if (findings.length === 0) return null;
  return (
    <details>
      <summary>{counted(findings.length, 'acknowledged finding')}</summary>
      <ul>
        {findings.map(({ finding, decision }) => (
          <li key={decision.id}>
            {driftWords(finding, characteristics)}: {decision.remark}{' '}
            <button type="button" disabled={!mayWrite} onClick={() => takeBack(decision.id)}>
              Take back<span className="visuallyHidden">{` ${findingName(finding, characteristics)}`}</span>
            </button>
          </li>
        ))}
      </ul>
      {failure !== null && <p role="alert">{failure}</p>}
    </details>
  );
}
