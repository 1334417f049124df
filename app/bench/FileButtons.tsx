'use client';

import { useEffect, useState } from 'react';
import type { BenchFile } from '../../lib/analysis/bench/types';

interface FileButtonsProps {
  readonly isReady: boolean;
  readonly files: () => readonly BenchFile[];
  readonly onSave: (file: BenchFile) => void;
}

function asFiles(files: readonly BenchFile[]): File[] {
  return files.map(({ name, text }) => new File([text], name, { type: 'text/csv' }));
}

/** The overhaul as two canonical files for whoever receives it: one press each, or both handed to another program of the phone. */
export function FileButtons({ isReady, files, onSave }: FileButtonsProps) {
  const [canShare, setCanShare] = useState(false);
  const [message, setMessage] = useState<string | null>(null);
  useEffect(() => {
    const sample = asFiles([{ name: 'overhauls.csv', text: 'overhaul' }]);
    setCanShare(typeof navigator.canShare === 'function' && navigator.canShare({ files: sample }));
  }, []);
  const share = () =>
    navigator.share({ files: asFiles(files()) }).then(
      () => setMessage(null),
      (error: unknown) => {
        const isLeft = error instanceof DOMException && error.name === 'AbortError';
        const cause = error instanceof Error ? error.message : String(error);
        setMessage(isLeft ? null : `The files were not sent: ${cause}. Save them and send them yourself.`);
      },
    );
  return (
    <>
      {['Save overhauls CSV', 'Save readings CSV'].map((words, index) => (
        <button
          key={words}
          type="button"
          disabled={!isReady}
          onClick={() => {
            const file = files()[index];
            if (file !== undefined) onSave(file);
          }}
        >
          {words}
        </button>
      ))}
      {canShare && (
        <button type="button" disabled={!isReady} onClick={share}>
          Send both files
        </button>
      )}
      {message !== null && <span role="alert">{message}</span>}
    </>
  );
}
