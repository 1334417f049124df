'use client';

import styles from '../frame/frame.module.css';
import { keptSiteWords } from '../words/keptSiteWords';
import { useKeeping, useKeptSite } from './useKeptSite';

/** Has the site kept for use without the network, and offers a newer version once all of it is there. */
export function NewerVersion() {
  useKeeping();
  const { kept, takeNewer } = useKeptSite();
  return (
    <div aria-live="polite" className="screenOnly">
      {kept === 'newer' && (
        <div className={styles.notice}>
          <p>
            {keptSiteWords.newer} {keptSiteWords.reloadsAll}
          </p>
          <p className="buttons">
            <button type="button" onClick={takeNewer}>
              {keptSiteWords.reload}
            </button>
          </p>
        </div>
      )}
    </div>
  );
}
