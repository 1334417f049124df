'use client';

import { useMemo } from 'react';
import type { RulingDecision } from '../../../lib/records/decisions/Decision';
import type { DataColumn } from '../../table/DataColumn';
import { DataTable } from '../../table/DataTable';
import { Written } from '../../table/Written';
import { counted } from '../../words/counted';
import { placeWords, ruledWords } from '../../words/rulingWords';
import recordStyles from '../records.module.css';
import { TakeBackButton } from '../TakeBackButton';

interface RulingsGivenProps {
  readonly rulings: readonly RulingDecision[];
  readonly busy: boolean;
  readonly onTakeBack: (ids: readonly string[]) => void;
}

const columns: readonly DataColumn<RulingDecision>[] = [
  {
    id: 'file',
    header: 'File',
    rowHeader: true,
    value: ({ file }) => file,
    cell: ({ file }) => <span className={recordStyles.name}>{file}</span>,
  },
  { id: 'line', header: 'Line', numeric: true, value: ({ line }) => line, cell: ({ line }) => String(line) },
  {
    id: 'column',
    header: 'Column',
    value: ({ column }) => column,
    cell: ({ column }) => <Written text={column} reason="the whole line" />,
  },
  {
    id: 'raw',
    header: 'As it stands in the file',
    value: ({ raw }) => raw,
    cell: ({ raw }) =>
      raw === '' ? <Written text={null} reason="empty" /> : <span className={recordStyles.raw}>{raw}</span>,
  },
  { id: 'ruled', header: 'Ruling', text: true, value: (one) => `${ruledWords(one)}: ${one.reason}` },
  {
    id: 'by',
    header: 'By',
    value: ({ by }) => by,
    cell: ({ by }) => <Written text={by} reason="no initials were given" />,
  },
];

/** Every ruling in force on held rows, each with a button that takes it back. */
export function RulingsGiven({ rulings, busy, onTakeBack }: RulingsGivenProps) {
  const withButton = useMemo(
    (): readonly DataColumn<RulingDecision>[] => [
      ...columns,
      {
        id: 'change',
        header: 'Change',
        saved: [],
        value: () => null,
        cell: ({ id, file, line, column }) => (
          <TakeBackButton
            ids={[id]}
            of={`the ruling on ${placeWords(file, line, column)}`}
            busy={busy}
            onTakeBack={onTakeBack}
          />
        ),
      },
    ],
    [busy, onTakeBack],
  );
  if (rulings.length === 0) return null;
  return (
    <>
      <DataTable
        caption={`${counted(rulings.length, 'ruling')} in force on held rows, in order of giving`}
        columns={withButton}
        rows={rulings}
        rowKey={({ id }) => id}
        empty=""
      />
      {rulings.length > 1 && (
        <p className="buttons">
          <button type="button" disabled={busy} onClick={() => onTakeBack(rulings.map(({ id }) => id))}>
            Take all {counted(rulings.length, 'ruling')} back
          </button>
        </p>
      )}
    </>
  );
}
