'use client';

import { useEngine } from '../engine/EngineProvider';
import { siteFleetName } from '../words/siteFleet';
import styles from './frame.module.css';
import { WorkNotice } from './WorkNotice';

/** What the engine is doing or what the last attempt came to, above the content of every page. */
export function EngineNotice() {
  const engine = useEngine();
  const { work, outcome, fleet } = engine.state;
  const isSaid = work !== null || outcome !== null || fleet === null;
  return (
    // Without anything to say it is no place that a reader should be led to.
    <section aria-label={isSaid ? 'State of the data' : undefined}>
      {work !== null && <WorkNotice key={work.label} work={work} engine={engine} />}
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
