'use client';

import { useEngine } from '../engine/EngineProvider';
import { keptSentences } from '../words/keptWords';
import { useKeptState } from './useKeptState';

/** What stands in the way of keeping what is done here, above the content of every page, and the way out. */
export function KeptNotice() {
  const { state, start } = useEngine();
  const kept = useKeptState();
  const sentences = kept === null ? [] : keptSentences(kept);
  const busy = state.work !== null;
  return (
    <section aria-label="What is kept in this browser" className="screenOnly">
      <div aria-live="polite">
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {kept !== null && (!kept.writes || kept.changedElsewhere) && (
        <p className="buttons">
          {kept.changedElsewhere && (
            <button type="button" disabled={busy} onClick={() => start('open')}>
              Open what is kept
            </button>
          )}
          {!kept.writes && (
            <button type="button" disabled={busy} onClick={() => start('takeOver')}>
              Take over writing
            </button>
          )}
        </p>
      )}
    </section>
  );
}
