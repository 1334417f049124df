'use client';

import { useMemo } from 'react';
import type { FleetResult } from '../../lib/analysis/types';
import { useQuery } from '../address/useQuery';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { WithFleet } from '../engine/WithFleet';
import { PaperView } from './PaperView';
import { ReportControls } from './ReportControls';
import styles from './report.module.css';
import { paperSettings } from './reportAddress';

function ReportContent({ fleet }: { readonly fleet: FleetResult }) {
  const [query, change] = useQuery();
  const settings = useMemo(() => paperSettings(query, fleet.asOf), [query, fleet]);
  const asked = useAsked(fleet, 'report', settings);
  return (
    <>
      <ReportControls fleet={fleet} settings={settings} query={query} onChange={change} />
      <WithAnswer asked={asked}>
        {(report, computing) => (
          <div aria-busy={computing} className={styles.paper}>
            {computing && (
              <p role="status" className="screenOnly">
                Being computed anew; what follows is still as it was.
              </p>
            )}
            <PaperView report={report} latest={fleet.asOf} query={query} />
          </div>
        )}
      </WithAnswer>
    </>
  );
}

/** The Report page: the planning paper of a scope and day, ready to print. */
export function ReportPage() {
  return <WithFleet>{(fleet) => <ReportContent fleet={fleet} />}</WithFleet>;
}
