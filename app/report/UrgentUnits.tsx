'use client';

import { type ReactNode, useMemo } from 'react';
import type { Decision } from '../../lib/analysis/decisions/types';
import type { Paper } from '../../lib/analysis/report/types';
import { cannotWait } from '../../lib/analysis/urgency';
import { formatCount, formatPercent } from '../../lib/charts/format';
import { fleetColumns } from '../fleet/fleetColumns';
import type { FleetRow } from '../fleet/fleetRows';
import { Prose } from '../frame/Prose';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { counted } from '../words/counted';
import { actionWords, noVerdict, partsWords, whyWords } from '../words/decisionWords';
import { noUrgentUnit } from '../words/reportWords';
import { rowRemark } from '../words/rowRemark';
import { capitalised } from '../words/seriesName';

interface UrgentUnitsProps {
  readonly paper: Paper;
  readonly rows: readonly FleetRow[];
  readonly sources: { readonly fleet: ReactNode; readonly advice: ReactNode };
}

const shown = ['unit', 'site', 'place', 'decides', 'level', 'early', 'median', 'late', 'next', 'chance'];

function columnsOf(decisionOf: ReadonlyMap<string, Decision>): readonly DataColumn<FleetRow>[] {
  const adviceOf = ({ unit }: FleetRow) => {
    const decision = decisionOf.get(unit.unit);
    return decision === undefined ? noVerdict : actionWords(decision);
  };
  return [
    ...fleetColumns('').filter(({ id }) => shown.includes(id)),
    { id: 'advice', header: 'Advice', value: adviceOf, cell: (row) => <Prose text={adviceOf(row)} /> },
  ];
}

/** The units that cannot wait for their next planned overhaul, what to do about each, and why. */
export function UrgentUnits({ paper, rows, sources }: UrgentUnitsProps) {
  const { decisions, fleet, spares } = paper;
  const decisionOf = useMemo(() => new Map(decisions.map((one) => [one.unit, one])), [decisions]);
  const columns = useMemo(() => columnsOf(decisionOf), [decisionOf]);
  const urgent = useMemo(() => rows.filter(({ outlook }) => cannotWait(outlook)), [rows]);
  const reasons = (row: FleetRow) => {
    const decision = decisionOf.get(row.unit.unit);
    const why = decision === undefined ? null : whyWords(decision, fleet.characteristics);
    const parts = decision === undefined ? null : partsWords(decision);
    return [
      why !== null && `${capitalised(why)}.`,
      parts !== null && `Parts: ${parts}.`,
      rowRemark(row),
    ].filter((text) => typeof text === 'string');
  };
  return (
    <section aria-label="Units that cannot wait">
      <h2>Units that cannot wait</h2>
      <p>
        A limit is past now with a chance over 90 %, or is met before the next planned overhaul with a chance
        over 10 %. Advice at an accepted risk of {formatPercent(spares.settings.acceptedRisk)}.{' '}
        {sources.fleet} {sources.advice}
      </p>
      <DataTable
        caption={`${formatCount(urgent.length)} of ${counted(rows.length, 'unit')}, the most pressing first, each with its reasons`}
        columns={columns}
        rows={urgent}
        rowKey={(row) => row.unit.unit}
        below={(row) => <Prose text={reasons(row).join(' ')} />}
        empty={noUrgentUnit(rows.map(({ outlook }) => outlook))}
      />
    </section>
  );
}
