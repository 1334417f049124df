'use client';

import type { ImportedFile } from '../../lib/analysis/types';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';

function count(id: string, header: string, value: (file: ImportedFile) => number): DataColumn<ImportedFile> {
  return { id, header, numeric: true, value };
}

const named: readonly DataColumn<ImportedFile>[] = [
  { id: 'file', header: 'File', rowHeader: true, value: (file) => file.file },
  {
    id: 'table',
    header: 'Recognised as',
    value: (file) => file.table,
    cell: (file) => <Written text={file.table} reason="not recognised" />,
  },
];

const counts: readonly DataColumn<ImportedFile>[] = [
  count('rowsIn', 'Rows in', (file) => file.rowsIn),
  count('rowsUsed', 'Rows used', (file) => file.rowsUsed),
  { ...count('rowsHeld', 'Rows held', (file) => file.rowsHeld), term: 'heldRow' },
  count('readingsIn', 'Reading cells in', (file) => file.readingsIn),
  count('readingsUsed', 'Readings used', (file) => file.readingsUsed),
  count('readingsNone', 'No reading', (file) => file.readingsNone),
  count('readingsHeld', 'Readings held', (file) => file.readingsHeld),
];

const message: DataColumn<ImportedFile> = {
  id: 'message',
  header: 'Message',
  text: true,
  value: (file) => file.message,
  cell: (file) => <Written text={file.message} reason="nothing to report" />,
};

const quiet = [...named, ...counts, message];
const telling = [...named, message, ...counts];

/** What each file was recognised as, its rows (in = used + held) and its cells for readings (in = used + no reading + held). */
export function FilesTable({ files }: { readonly files: readonly ImportedFile[] }) {
  return (
    <DataTable
      caption="Files: rows in = used + held; reading cells in = used + no reading + held"
      // What a file lacks stands beside its name, and not out of sight behind the counts.
      columns={files.some((file) => file.table === null) ? telling : quiet}
      rows={files}
      rowKey={(file, index) => `${file.file} ${index}`}
      empty="No file has been read."
    />
  );
}
