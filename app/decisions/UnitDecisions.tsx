'use client';

import Link from 'next/link';
import { useMemo } from 'react';
import { defaultDecisionSettings } from '../../lib/analysis/decisions/decisionsOf';
import type { Decision, SeriesDecision } from '../../lib/analysis/decisions/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatChance, formatMm } from '../../lib/charts/format';
import { useQuery } from '../address/useQuery';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { actionWords } from '../words/decisionWords';
import { seriesName } from '../words/seriesName';
import { AcceptedRisk, acceptedRiskOf } from './AcceptedRisk';
import { decisionColumns } from './decisionColumns';

function seriesColumns(
  characteristics: FleetResult['characteristics'],
): readonly DataColumn<SeriesDecision>[] {
  const chance = (
    id: string,
    header: string,
    value: (one: SeriesDecision) => number | null,
  ): DataColumn<SeriesDecision> => ({
    id,
    header,
    numeric: true,
    value,
    cell: (one) => (
      <Written
        text={value(one) === null ? null : formatChance(value(one))}
        reason={one.reason ?? 'not known'}
      />
    ),
  });
  return [
    {
      id: 'series',
      header: 'Series',
      rowHeader: true,
      value: ({ series }) => seriesName(series, characteristics),
    },
    {
      id: 'limit',
      header: 'Limit',
      numeric: true,
      value: ({ limit_mm }) => limit_mm,
      cell: ({ limitKind, limit_mm }) => `${limitKind} ${formatMm(limit_mm)}`,
    },
    { id: 'action', header: 'Advice', value: actionWords },
    chance('before', 'Chance before it', ({ chanceBefore }) => chanceBefore),
    chance('running', 'Chance if run on', ({ chanceRunningOn }) => chanceRunningOn),
    chance('renewed', 'Chance if renewed', ({ chanceRenewed }) => chanceRenewed),
  ];
}

function NextOverhaul({
  decision,
  characteristics,
}: {
  readonly decision: Decision;
  readonly characteristics: FleetResult['characteristics'];
}) {
  const columns = useMemo(() => seriesColumns(characteristics), [characteristics]);
  return (
    <details>
      <summary>The next overhaul, limit by limit</summary>
      <DataTable
        caption="Limits at the next overhaul"
        columns={columns}
        rows={decision.series}
        rowKey={({ series, limitKind }) => `${series} ${limitKind}`}
        empty="No limit is known: without a limit there is no verdict."
      />
    </details>
  );
}

/** What to do at each planned overhaul of one unit within 24 months. */
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
          const next = own[0];
          return (
            <>
              <DataTable
                caption={`Planned overhauls of ${unit} within ${defaultDecisionSettings.horizonMonths} months`}
                columns={columns}
                rows={own}
                rowKey={({ overhaul }) => String(overhaul)}
                empty="No overhaul of this unit is planned."
              />
              {next !== undefined && next.series.length > 0 && (
                <NextOverhaul decision={next} characteristics={fleet.characteristics} />
              )}
              <p>
                A later overhaul supposes that the advice for the earlier ones is followed. An aid only: the
                maker’s manual and the inspection come first.{' '}
                <Link href="/methods/#decisions">How this was computed</Link>
              </p>
            </>
          );
        }}
      </WithAnswer>
    </section>
  );
}
