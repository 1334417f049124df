'use client';

import { useMemo } from 'react';
import type { SparesSettings } from '../../lib/analysis/demand/types';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { Prose } from '../frame/Prose';
import { DataTable } from '../table/DataTable';
import { whatIfSentence } from '../words/sparesSentence';
import { PlanMessages } from './PlanMessages';
import type { PlanPanelProps } from './PlanPanelProps';
import { changedPlan } from './sparesAddress';
import { WhatIfControls } from './WhatIfControls';
import { whatIfColumns } from './whatIfColumns';

function Changed({
  fleet,
  settings,
  changed,
}: Omit<PlanPanelProps, 'query' | 'onChange'> & { readonly changed: Partial<SparesSettings> }) {
  const asked = useAsked(fleet, 'whatIf', settings, changed);
  return (
    <WithAnswer asked={asked}>
      {(result) => (
        <>
          <p role="status">
            <Prose text={whatIfSentence(result)} />
          </p>
          <DataTable
            caption="Parts that change, present plan to changed plan"
            columns={whatIfColumns}
            rows={result.parts}
            rowKey={({ part }) => part}
            empty="No part changes."
          />
          <PlanMessages messages={result.messages} />
        </>
      )}
    </WithAnswer>
  );
}

/** A changed plan beside the present one, computed as it is typed. */
export function WhatIfPanel({ fleet, settings, query, onChange }: PlanPanelProps) {
  const changed = useMemo(() => changedPlan(query, settings), [query, settings]);
  return (
    <section aria-label="What if">
      <h2>What if</h2>
      <p>
        Change one or several; the difference from the present plan follows at once. The same draws are used,
        so that what differs is the change and not chance.
      </p>
      <WhatIfControls fleet={fleet} settings={settings} query={query} onChange={onChange} />
      {changed === null ? (
        <p>Nothing is changed.</p>
      ) : (
        <Changed fleet={fleet} settings={settings} changed={changed} />
      )}
    </section>
  );
}
