'use client';

import { useMemo } from 'react';
import type { Problem } from '../../lib/analysis/types';
import { formatCount } from '../../lib/charts/format';
import { compareValues } from '../table/compareValues';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { counted } from '../words/counted';
import styles from './records.module.css';

interface ProblemsTableProps {
  readonly problems: readonly Problem[];
  /** All that were found; the list may stop short of them. */
  readonly found: number;
  /** File and action looked at; empty for all. */
  readonly file: string;
  readonly action: string;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
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
  { id: 'action', header: 'What was done', value: (problem) => problem.action },
  { id: 'reason', header: 'Reason', text: true, value: (problem) => problem.reason },
];

/** Every row or cell that is not used, or that was read with an interpretation, with the reason. */
export function ProblemsTable({ problems, found, file, action, onChange }: ProblemsTableProps) {
  const files = useMemo(
    () => [...new Set(problems.map((problem) => problem.file))].sort(compareValues),
    [problems],
  );
  const shown = useMemo(
    () =>
      problems.filter(
        (problem) => (file === '' || problem.file === file) && (action === '' || problem.action === action),
      ),
    [problems, file, action],
  );
  if (problems.length === 0) return <p>Nothing was held and nothing had to be interpreted.</p>;
  return (
    <>
      {found > problems.length && (
        <p>
          {counted(found, 'row or cell', 'rows or cells')} were held or interpreted; the first{' '}
          {formatCount(problems.length)} are listed.
        </p>
      )}
      <form className="controls" aria-label="Filters" onSubmit={(event) => event.preventDefault()}>
        <label>
          File
          <select value={file} onChange={(event) => onChange({ file: event.target.value })}>
            <option value="">all</option>
            {files.map((name) => (
              <option key={name} value={name}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <label>
          What was done
          <select value={action} onChange={(event) => onChange({ action: event.target.value })}>
            <option value="">all</option>
            <option value="held">held</option>
            <option value="interpreted">interpreted</option>
          </select>
        </label>
      </form>
      <DataTable
        caption={`${counted(shown.length, 'row or cell', 'rows or cells')} held or interpreted`}
        columns={columns}
        rows={shown}
        rowKey={(problem, index) => `${problem.file} ${problem.row} ${problem.column} ${index}`}
        empty="Nothing passes the filters."
      />
    </>
  );
}
