'use client';

import { useState } from 'react';
import { numberStyles, writingInForce } from '../../lib/charts/writingStyle';
import { pastedTable } from '../../lib/records/csv/pastedTable';
import { writeCsv } from '../../lib/records/csv/writeCsv';
import { saveFile } from '../records/saveFile';
import type { SavedTable } from '../table/savedTable';
import { counted } from '../words/counted';
import { copyTable } from './copyTable';
import { ExportRow } from './ExportRow';
import { fileName } from './fileName';

interface TableExportProps {
  /** What the table is called. */
  readonly title: string;
  /** Makes the table when it is asked for: all of its rows, in the order shown. */
  readonly table: () => SavedTable;
}

/** Saves a table as CSV or copies it for a spreadsheet. */
export function TableExport({ title, table }: TableExportProps) {
  const [said, setSaid] = useState('');
  const save = () => {
    const { header, rows } = table();
    saveFile(fileName(title, 'csv'), writeCsv(header, rows), 'text/csv;charset=utf-8');
    setSaid(`${counted(rows.length, 'row')} saved.`);
  };
  const copy = () => {
    const { header, rows } = table();
    const { decimal } = numberStyles[writingInForce().numbers];
    copyTable(pastedTable(header, rows, decimal)).then(
      () => setSaid(`${counted(rows.length, 'row')} copied.`),
      (error: unknown) =>
        setSaid(
          `Not copied (${error instanceof Error ? error.message : String(error)}): save it as CSV instead.`,
        ),
    );
  };
  const acts = [
    {
      words: 'Save CSV',
      hint: 'All rows in the order shown, all columns; decimal point and ISO dates',
      act: save,
    },
    {
      words: 'Copy',
      hint: 'All rows in the order shown, all columns, to paste into a spreadsheet',
      act: copy,
    },
  ];
  return <ExportRow title={title} acts={acts} said={said} />;
}
