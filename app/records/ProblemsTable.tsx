'use client';

import { useDeferredValue, useMemo } from 'react';
import type { Problem } from '../../lib/analysis/types';
import { formatCount } from '../../lib/charts/format';
import type { RulingDecision } from '../../lib/records/decisions/Decision';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { counted } from '../words/counted';
import { ActionCell, SelectCell } from './held/HeldCells';
import { HeldDownload } from './held/HeldDownload';
import { OpenedRow } from './held/OpenedRow';
import { RulingBar } from './held/RulingBar';
import { RulingsContext } from './held/RulingsContext';
import { useRulings } from './held/useRulings';
import { filtered, type ProblemFilter, ProblemFilters, valuesOf } from './ProblemFilters';
import styles from './records.module.css';

interface ProblemsTableProps {
  readonly problems: readonly Problem[];
  /** All that were found; the list may stop short of them. */
  readonly found: number;
  readonly filter: ProblemFilter;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
  /** Held rows of one's own files may be ruled on. */
  readonly mayRule: boolean;
  readonly busy: boolean;
  readonly onApply: (rulings: readonly RulingDecision[]) => void;
}

const longestRaw = 300;

/** The raw text as text, shortened where it would fill the page. */
function rawText(raw: string): string {
  return raw.length <= longestRaw
    ? raw
    : `${raw.slice(0, longestRaw)}… (${counted(raw.length, 'character')})`;
}

const columns: readonly DataColumn<Problem>[] = [
  { id: 'file', header: 'File', rowHeader: true, value: (problem) => problem.file },
  {
    id: 'line',
    header: 'Line',
    numeric: true,
    value: (problem) => problem.row,
    cell: (problem) => String(problem.row),
  },
  {
    id: 'column',
    header: 'Column',
    value: (problem) => problem.column,
    cell: (problem) => <Written text={problem.column} reason="the whole row or file" />,
  },
  {
    id: 'raw',
    header: 'As it stands in the file',
    value: (problem) => problem.raw,
    cell: (problem) =>
      problem.raw === '' ? (
        <Written text={null} reason="empty" />
      ) : (
        <span className={styles.raw}>{rawText(problem.raw)}</span>
      ),
  },
  {
    id: 'action',
    header: 'What was done',
    value: (problem) => problem.action,
    cell: (problem) => <ActionCell problem={problem} />,
  },
  { id: 'reason', header: 'Reason', text: true, value: (problem) => problem.reason },
];

const withSelection: readonly DataColumn<Problem>[] = [
  ...columns.slice(0, 1),
  {
    id: 'select',
    header: 'Select',
    saved: [],
    value: () => null,
    cell: (problem) => <SelectCell problem={problem} />,
  },
  ...columns.slice(1),
];

/** Every row or cell that is not used, or that was read with an interpretation, with the reason and the ways to rule on it. */
export function ProblemsTable(props: ProblemsTableProps) {
  const { problems, found, onChange, mayRule, busy, onApply } = props;
  const filter = useDeferredValue(props.filter);
  const rulings = useRulings(problems);
  const files = useMemo(() => valuesOf(problems, (problem) => problem.file), [problems]);
  const names = useMemo(() => valuesOf(problems, (problem) => problem.column), [problems]);
  const shown = useMemo(() => filtered(problems, filter), [problems, filter]);
  if (problems.length === 0) return <p>Nothing was held and nothing had to be interpreted.</p>;
  const hasHeld = problems.some(({ action }) => action === 'held');
  return (
    <RulingsContext value={mayRule ? rulings : null}>
      {found > problems.length && (
        <p>
          {counted(found, 'row or cell', 'rows or cells')} were held or interpreted; the first{' '}
          {formatCount(problems.length)} are listed.
        </p>
      )}
      {hasHeld && <HeldDownload mayRule={mayRule} />}
      <ProblemFilters files={files} columns={names} filter={props.filter} onChange={onChange} />
      <DataTable
        caption={`${counted(shown.length, 'row or cell', 'rows or cells')} held or interpreted`}
        columns={mayRule && hasHeld ? withSelection : columns}
        rows={shown}
        rowKey={(problem, index) => `${problem.file} ${problem.row} ${problem.column} ${index}`}
        empty="Nothing passes the filters."
        below={(problem) => (mayRule && problem === rulings.opened ? <OpenedRow problem={problem} /> : null)}
      />
      {mayRule && hasHeld && <RulingBar rulings={rulings} shown={shown} busy={busy} onApply={onApply} />}
    </RulingsContext>
  );
}
