'use client';

import type { PaperChange, Report } from '../../lib/analysis/report/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatDate } from '../../lib/charts/format';
import { Prose } from '../frame/Prose';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { counted } from '../words/counted';
import {
  changeKind,
  changeName,
  changeStates,
  changesSentence,
  openedSince,
} from '../words/paperChangeWords';
import { capitalised } from '../words/seriesName';
import { useWrittenMemo } from '../writing/useWriting';

function columnsOf(
  characteristics: FleetResult['characteristics'],
  since: string,
  asOf: string,
): readonly DataColumn<PaperChange>[] {
  return [
    {
      id: 'name',
      header: 'Unit or part',
      rowHeader: true,
      value: (change) => changeName(change, characteristics),
    },
    { id: 'kind', header: 'Change', value: (change) => capitalised(changeKind(change)) },
    {
      id: 'before',
      header: `On ${formatDate(since)}`,
      value: (change) => changeStates(change, characteristics).before,
      cell: (change) => <Prose text={changeStates(change, characteristics).before} />,
    },
    {
      id: 'after',
      header: `On ${formatDate(asOf)}`,
      value: (change) => changeStates(change, characteristics).after,
      cell: (change) => <Prose text={changeStates(change, characteristics).after} />,
    },
    {
      id: 'opened',
      header: 'In between',
      value: openedSince,
      cell: (change) => {
        const text = openedSince(change);
        return text === null ? <Written text={null} reason="said of units only" /> : <Prose text={text} />;
      },
    },
  ];
}

interface ChangesSectionProps {
  readonly compared: NonNullable<Report['compared']>;
  readonly fleet: FleetResult;
}

/** What changed since an earlier paper of the same scope and records. */
export function ChangesSection({ compared, fleet }: ChangesSectionProps) {
  const { since, changes } = compared;
  const columns = useWrittenMemo(() => columnsOf(fleet.characteristics, since, fleet.asOf), [fleet, since]);
  return (
    <section aria-label="What changed">
      <h2>What changed</h2>
      <p>
        <Prose text={changesSentence(changes, since)} /> Both papers are made from the same records: what is
        dated later than a day is left out of its paper; plan and stock have no history and are those of the
        files on both. A date moved if each paper’s median lies outside the other’s range from early to late
        and they are 30 days or more apart.
      </p>
      <DataTable
        caption={counted(changes.length, 'change')}
        columns={columns}
        rows={changes}
        rowKey={(_, index) => String(index)}
        empty="Nothing has changed that a plan turns on."
      />
    </section>
  );
}
