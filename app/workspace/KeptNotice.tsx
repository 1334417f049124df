'use client';

import { useEngine } from '../engine/EngineProvider';
import { clearedSentence, keptSentences } from '../words/keptWords';
import { useKept } from './useKeptState';

/** What stands in the way of keeping what is done here, above the content of every page, and the way out. */
export function KeptNotice() {
  const { state, start } = useEngine();
  const { state: kept, isCleared, leaveCleared } = useKept();
  const sentences = [...(isCleared ? [clearedSentence] : []), ...(kept === null ? [] : keptSentences(kept))];
  const busy = state.work !== null;
  return (
    // Without anything to say it is no place that a reader should be led to.
    <section
      aria-label={sentences.length === 0 ? undefined : 'What is kept in this browser'}
      className="screenOnly"
    >
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
      {isCleared && (
        <p className="buttons">
          <button type="button" onClick={leaveCleared}>
            Leave this notice
          </button>
        </p>
      )}
    </section>
  );
}
