'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { defaultDecisionSettings } from '../../lib/analysis/decisions/defaultDecisionSettings';
import type { FleetResult } from '../../lib/analysis/types';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { DataTable } from '../table/DataTable';
import { adviceSentence } from '../words/decisionWords';
import { AcceptedRisk, acceptedRiskOf } from './AcceptedRisk';
import { decisionColumns } from './decisionColumns';

interface FleetAdviceProps {
  readonly fleet: FleetResult;
  /** Units that pass the filters. */
  readonly units: ReadonlySet<string>;
  readonly query: URLSearchParams;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** What to do at the next overhaul of each unit that is listed. */
export function FleetAdvice({ fleet, units, query, onChange }: FleetAdviceProps) {
  const acceptedRisk = acceptedRiskOf(query);
  const asked = useAsked(fleet, 'decisions', { ...defaultDecisionSettings, acceptedRisk });
  const columns = useMemo(() => decisionColumns(fleet.characteristics, true), [fleet]);
  return (
    <section aria-label="At the next overhaul" className="landscape">
      <h2>At the next overhaul</h2>
      <AcceptedRisk risk={acceptedRisk} onChange={onChange} />
      <WithAnswer asked={asked}>
        {(decisions) => {
          const next = decisions.filter(({ unit, overhaul }) => overhaul === 1 && units.has(unit));
          return (
            <>
              <p>
                {adviceSentence(next, acceptedRisk)} ‘Chance if run on’ is that of passing a limit before the
                following overhaul if nothing is fitted. The maker’s manual and the inspection come first.{' '}
                <Link href="/methods/#decisions">How this was computed</Link>
              </p>
              <DataTable
                caption="Advice for the next planned overhaul of each unit"
                columns={columns}
                rows={next}
                rowKey={({ unit }) => unit}
                empty="No unit passes the filters."
              />
            </>
          );
        }}
      </WithAnswer>
    </section>
  );
}
