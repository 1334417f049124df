'use client';

import { useEffect, useRef, useState } from 'react';
import type { Engine } from '../engine/EngineProvider';
import { isOfLastTime, type Work } from '../engine/engineState';
import { useProgress } from '../engine/useProgress';
import { beforeSentence } from '../words/beforeSentence';
import styles from './frame.module.css';

/** Steps follow each other faster than they can be read out: one is said so often at most, ms. */
export const saidEvery_ms = 15_000;

/** A text that changes often, as it stands every so many ms: for who is read to. */
function useSeldom(text: string): string {
  const latest = useRef(text);
  const [said, setSaid] = useState(text);
  latest.current = text;
  useEffect(() => {
    const timer = setInterval(() => setSaid(latest.current), saidEvery_ms);
    return () => clearInterval(timer);
  }, []);
  return said;
}

/** The work under way: what is shown meanwhile, the step and how far it is, and the way to stop it. */
export function WorkNotice({ work, engine }: { readonly work: Work; readonly engine: Engine }) {
  const progress = useProgress();
  const step = progress?.step ?? 'starting';
  const shown = isOfLastTime(engine.state) ? beforeSentence(engine.state.fleet) : null;
  const text = `${shown === null ? '' : `${shown} `}${work.label}: ${step}.`;
  const said = useSeldom(text);
  return (
    <div className={work.behind || shown !== null ? `${styles.notice} ${styles.aside}` : styles.notice}>
      <p aria-hidden="true">{text}</p>
      <p role="status" className="visuallyHidden">
        {said}
      </p>
      <progress aria-label={work.label} max={1} value={progress?.share ?? 0} />
      {work.stalled && (
        <p role="alert">
          There has been no sign of progress for a while. Large files can take minutes; a browser that blocks
          scripts never finishes.
        </p>
      )}
      <p className="buttons">
        {work.stalled && (
          <button type="button" onClick={engine.waitOn}>
            Wait on
          </button>
        )}
        <button type="button" onClick={engine.cancel} disabled={work.cancelling}>
          {work.cancelling ? 'Stopping' : 'Stop'}
        </button>
      </p>
    </div>
  );
}
