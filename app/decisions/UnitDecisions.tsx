'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { defaultDecisionSettings } from '../../lib/analysis/decisions/defaultDecisionSettings';
import type { Decision } from '../../lib/analysis/decisions/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatDate, formatPercent } from '../../lib/charts/format';
import { useQuery } from '../address/useQuery';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { DataTable } from '../table/DataTable';
import { actionWords } from '../words/decisionWords';
import { AcceptedRisk, acceptedRiskOf } from './AcceptedRisk';
import { decisionColumns } from './decisionColumns';
import { limitColumns } from './limitColumns';

interface LimitsProps {
  readonly decision: Decision;
  readonly characteristics: FleetResult['characteristics'];
}

/** One overhaul, limit by limit. */
function Limits({ decision, characteristics }: LimitsProps) {
  const columns = useMemo(() => limitColumns(characteristics), [characteristics]);
  const day = `the overhaul planned for ${formatDate(decision.date)}`;
  return (
    <details>
      <summary>
        Limit by limit at {day}: {actionWords(decision)}
      </summary>
      <DataTable
        caption={`Limits at ${day}`}
        columns={columns}
        rows={decision.series}
        rowKey={({ series, limitKind }) => `${series} ${limitKind}`}
        empty="No limit is known: without a limit there is no verdict."
      />
    </details>
  );
}

/** What to do at the next overhaul of one unit and at every other one planned within 24 months. */
export function UnitDecisions({ fleet, unit }: { readonly fleet: FleetResult; readonly unit: string }) {
  const [query, change] = useQuery();
  const acceptedRisk = acceptedRiskOf(query);
  const asked = useAsked(fleet, 'decisions', { ...defaultDecisionSettings, acceptedRisk });
  const columns = useMemo(() => decisionColumns(fleet.characteristics, false), [fleet]);
  return (
    <section aria-label="At its overhauls">
      <h2>At its overhauls</h2>
      <AcceptedRisk risk={acceptedRisk} onChange={change} />
      <WithAnswer asked={asked}>
        {(decisions) => {
          const own = decisions.filter((decision) => decision.unit === unit);
          return (
            <>
              <DataTable
                caption={`The next overhaul of ${unit} and all others planned within ${defaultDecisionSettings.horizonMonths} months`}
                columns={columns}
                rows={own}
                rowKey={({ overhaul }) => String(overhaul)}
                empty="No overhaul of this unit is planned."
              />
              {own
                .filter(({ series, date }) => series.length > 0 && date !== null)
                .map((decision) => (
                  <Limits
                    key={decision.overhaul}
                    decision={decision}
                    characteristics={fleet.characteristics}
                  />
                ))}
              <p>
                At an accepted risk of {formatPercent(acceptedRisk)}. A later overhaul supposes that the
                advice for the earlier ones is followed. An aid only: the maker’s manual and the inspection
                come first. <Link href="/methods/#decisions">How this was computed</Link>
              </p>
            </>
          );
        }}
      </WithAnswer>
    </section>
  );
}
