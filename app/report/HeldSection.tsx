'use client';

import type { ReactNode } from 'react';
import type { HeldRows, Paper } from '../../lib/analysis/report/types';
import { formatCount } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { waitingSentence } from '../words/questionWords';
import { effectWords, heldReason, heldSentence } from '../words/reportWords';

const columns: readonly DataColumn<HeldRows>[] = [
  {
    id: 'unit',
    header: 'Unit',
    rowHeader: true,
    value: ({ unit }) => unit,
    cell: ({ unit }) => unit ?? 'no known unit',
  },
  {
    id: 'held',
    header: 'Rows and cells held',
    term: 'heldRow',
    numeric: true,
    value: ({ held }) => held,
    cell: ({ held }) => formatCount(held),
  },
  { id: 'reason', header: 'Reason', text: true, value: heldReason },
  { id: 'effect', header: 'Effect', text: true, value: effectWords },
];

interface HeldSectionProps {
  readonly paper: Paper;
  readonly source: ReactNode;
}

/** What is held of the units in the scope and what that does to their verdicts. */
export function HeldSection({ paper, source }: HeldSectionProps) {
  const waiting = waitingSentence(paper.fleet.questions);
  return (
    <section aria-label="Held data">
      <h2>Held data</h2>
      <p>
        {heldSentence(paper)} {waiting !== null && `In all files ${waiting} `}
        {source}
      </p>
      {paper.held.length > 0 && (
        <DataTable
          caption="Held rows and cells by unit"
          columns={columns}
          rows={paper.held}
          rowKey={({ unit }) => unit ?? ''}
          empty="Nothing is held."
        />
      )}
    </section>
  );
}
