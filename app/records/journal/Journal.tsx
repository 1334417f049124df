'use client';

import { useMemo } from 'react';
import type { FleetResult } from '../../../lib/analysis/types';
import { isAbout } from '../../../lib/records/decisions/acknowledgements';
import type { JournalEntry } from '../../../lib/records/decisions/Decision';
import type { DataColumn } from '../../table/DataColumn';
import { DataTable } from '../../table/DataTable';
import { Written } from '../../table/Written';
import { counted } from '../../words/counted';
import { aboutWords, actWords, afterWords, beforeWords, timeWords } from '../../words/rulingWords';
import { siteFleetName } from '../../words/siteFleet';
import { saveFile } from '../saveFile';
import { journalCsv } from './journalCsv';
import { useJournal } from './useJournal';

const columns: readonly DataColumn<JournalEntry>[] = [
  { id: 'number', header: 'Number', numeric: true, rowHeader: true, value: ({ number }) => number },
  { id: 'at', header: 'When', value: ({ at }) => at, cell: ({ at }) => timeWords(at) },
  {
    id: 'by',
    header: 'Who',
    value: ({ by }) => by,
    cell: ({ by }) => <Written text={by} reason="no initials were given" />,
  },
  { id: 'act', header: 'What was done', text: true, value: actWords },
  { id: 'about', header: 'About', text: true, value: ({ decision }) => aboutWords(decision) },
  { id: 'before', header: 'Before', text: true, value: beforeWords },
  { id: 'after', header: 'After', text: true, value: afterWords },
];

/** Every decision ever made about the own files, and every acknowledged signal of the data that are open: who, when, what, before and after; the newest first. */
export function Journal({ source }: { readonly source: FleetResult['source'] }) {
  const inOrder = useJournal();
  const entries = useMemo(
    () => inOrder.filter(({ decision }) => isAbout(decision, source)).reverse(),
    [inOrder, source],
  );
  if (entries.length === 0) return null;
  return (
    <section aria-labelledby="journal">
      <h2 id="journal">Journal</h2>
      <p>
        {source === 'own'
          ? 'Every decision about your files'
          : `Every acknowledged signal of the ${siteFleetName()}`}
        , those taken back too. Acknowledgements can be taken back on the page ‘Drift’
        {source === 'own' && ', what else is in force under ‘Decisions in force’'}.
      </p>
      <DataTable
        caption={`${counted(entries.length, 'entry', 'entries')}, the newest first`}
        columns={columns}
        rows={entries}
        rowKey={({ number }) => String(number)}
        empty=""
      />
      <p className="buttons">
        <button
          type="button"
          onClick={() => saveFile('journal.csv', journalCsv(inOrder), 'text/csv;charset=utf-8')}
        >
          Save the whole journal as CSV
        </button>
      </p>
    </section>
  );
}
