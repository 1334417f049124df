'use client';

import { type Engine, useEngine } from '../engine/EngineProvider';
import { isOfLastTime, type Work } from '../engine/engineState';
import { useProgress } from '../engine/useProgress';
import { beforeSentence } from '../words/beforeSentence';
import { siteFleetName } from '../words/siteFleet';
import styles from './frame.module.css';

function WorkNotice({ work, engine }: { readonly work: Work; readonly engine: Engine }) {
  const progress = useProgress();
  const step = progress?.step ?? 'starting';
  const shown = isOfLastTime(engine.state) ? beforeSentence(engine.state.fleet) : null;
  return (
    <div className={work.behind || shown !== null ? `${styles.notice} ${styles.aside}` : styles.notice}>
      <p role="status">
        {shown !== null && `${shown} `}
        {work.label}: {step}.
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

/** What the engine is doing or what the last attempt came to, above the content of every page. */
export function EngineNotice() {
  const engine = useEngine();
  const { work, outcome, fleet } = engine.state;
  return (
    <section aria-label="State of the data">
      {work !== null && <WorkNotice work={work} engine={engine} />}
      <div aria-live="polite">
        {outcome !== null && (
          <p className={outcome.ok ? styles.outcome : styles.failure}>{outcome.message}</p>
        )}
      </div>
      {fleet === null && work === null && (
        <p className="buttons">
          <button type="button" onClick={() => engine.start('open')}>
            Try again
          </button>
          <button type="button" onClick={() => engine.start('openDemo')}>
            Open the {siteFleetName()}
          </button>
        </p>
      )}
    </section>
  );
}
