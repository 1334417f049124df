'use client';

import { type ReactNode, useMemo } from 'react';
import type { DriftFinding } from '../../lib/analysis/drift/types';
import type { Paper } from '../../lib/analysis/report/types';
import { findingColumns } from '../drift/findingColumns';
import { DataTable } from '../table/DataTable';
import { counted } from '../words/counted';

interface SignalsSectionProps {
  readonly paper: Paper;
  /** Open findings, the strongest first. */
  readonly open: readonly DriftFinding[];
  readonly source: ReactNode;
}

/** Signals of drift that nobody has acknowledged, against those that chance brings. */
export function SignalsSection({ paper, open, source }: SignalsSectionProps) {
  const { drift, fleet } = paper;
  const columns = useMemo(() => findingColumns(fleet.characteristics), [fleet]);
  const acknowledged = drift.findings.length - open.length;
  return (
    <section aria-label="Signals of drift">
      <h2>Signals of drift</h2>
      <p>
        The budget of false signals holds for the charts of the whole fleet.{' '}
        {acknowledged > 0 &&
          `${counted(acknowledged, 'finding is', 'findings are')} acknowledged and not listed. `}
        {source}
      </p>
      <DataTable
        caption={`${counted(open.length, 'open finding')} in the scope, those first that chance would bring least often`}
        columns={columns}
        rows={open}
        rowKey={({ unit, series }) => `${unit} ${series}`}
        empty={
          drift.readings === 0 ? 'No reading can be compared with a forecast yet.' : 'No signal is open.'
        }
      />
    </section>
  );
}
