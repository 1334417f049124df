'use client';

import { useId, useState } from 'react';
import type { DriftFinding } from '../../lib/analysis/drift/types';
import { useInitials } from '../records/held/useInitials';
import { useMayWrite } from '../workspace/useKeptState';
import type { Acknowledgements } from './useAcknowledgements';

interface AcknowledgeProps {
  readonly finding: DriftFinding;
  /** What the finding is called, to tell its buttons from those of others. */
  readonly name: string;
  readonly acknowledged: Acknowledgements;
}

/** Acknowledges a finding with a remark, signed with initials; it comes back when there are later signals. */
export function Acknowledge({ finding, name, acknowledged }: AcknowledgeProps) {
  const [isOpen, setOpen] = useState(false);
  const [remark, setRemark] = useState('');
  const [failure, setFailure] = useState<string | null>(null);
  const [initials, sign] = useInitials();
  const mayWrite = useMayWrite();
  const failureId = useId();
  if (!isOpen)
    return (
      <button type="button" disabled={!mayWrite} onClick={() => setOpen(true)}>
        Acknowledge<span className="visuallyHidden">{` ${name}`}</span>
      </button>
    );
  const submit = () => {
    if (remark.trim() === '') {
      setFailure('Write what was found or decided: the journal keeps it.');
      return;
    }
    acknowledged.acknowledge(finding, remark.trim()).catch((error: unknown) => {
      setFailure(
        `It was not written to the journal: ${error instanceof Error ? error.message : String(error)}`,
      );
    });
  };
  return (
    <form
      className="controls"
      aria-label={`Acknowledge ${name}`}
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <label>
        Remark
        <input
          value={remark}
          aria-describedby={failure === null ? undefined : failureId}
          onChange={(event) => setRemark(event.target.value)}
        />
      </label>
      <label>
        Initials
        <input size={4} value={initials} onChange={(event) => sign(event.target.value)} />
      </label>
      <button type="submit" disabled={!mayWrite}>
        Acknowledge
      </button>
      <button type="button" onClick={() => setOpen(false)}>
        Cancel
      </button>
      {failure !== null && (
        <p role="alert" id={failureId}>
          {failure}
        </p>
      )}
    </form>
  );
}
