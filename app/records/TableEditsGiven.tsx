'use client';

import { useMemo } from 'react';
import type { TableDecision } from '../../lib/records/decisions/Decision';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { counted } from '../words/counted';
import { changedWords, rowName } from '../words/rowWords';
import { TakeBackButton } from './TakeBackButton';

interface TableEditsGivenProps {
  readonly edits: readonly TableDecision[];
  readonly busy: boolean;
  readonly onTakeBack: (ids: readonly string[]) => void;
}

/** Every row edited on the Tables page that is in force, each with a button that takes the edit back. */
export function TableEditsGiven({ edits, busy, onTakeBack }: TableEditsGivenProps) {
  const columns = useMemo(
    (): readonly DataColumn<TableDecision>[] => [
      { id: 'row', header: 'Row', rowHeader: true, value: ({ key }) => rowName(key) },
      { id: 'table', header: 'Table', value: ({ table }) => table },
      {
        id: 'was',
        header: 'In the files',
        text: true,
        value: (one) => changedWords(one, 'decided', null).before,
      },
      { id: 'is', header: 'As edited', text: true, value: (one) => changedWords(one, 'decided', null).after },
      {
        id: 'change',
        header: 'Change',
        saved: [],
        value: () => null,
        cell: ({ id, key, table }) => (
          <TakeBackButton
            ids={[id]}
            of={`the edit of row ${rowName(key)} of ${table}`}
            busy={busy}
            onTakeBack={onTakeBack}
          />
        ),
      },
    ],
    [busy, onTakeBack],
  );
  if (edits.length === 0) return null;
  return (
    <DataTable
      caption={`${counted(edits.length, 'row', 'rows')} edited on the page ‘Tables’, in order of editing`}
      columns={columns}
      rows={edits}
      rowKey={({ id }) => id}
      empty=""
    />
  );
}
