import type { HistoryRow } from '../../lib/analysis/types';
import { formatHours } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { Written } from '../table/Written';

function hoursText(row: HistoryRow): string {
  return row.unitHours !== null && row.hoursDerived
    ? `${formatHours(row.unitHours)} (derived)`
    : formatHours(row.unitHours);
}

function position(row: HistoryRow): string | null {
  const parts = [row.site, row.engine, row.bank].filter((part) => part !== null);
  return parts.length === 0 ? null : parts.join(' / ');
}

/** Columns of the unit's overhauls. */
export const historyColumns: readonly DataColumn<HistoryRow>[] = [
  { id: 'date', header: 'Date', date: true, rowHeader: true, value: (row) => row.date },
  { id: 'overhaul', header: 'Overhaul', term: 'overhaul', value: (row) => row.overhaul },
  {
    id: 'hours',
    header: 'Hours on the unit',
    numeric: true,
    saved: [
      { header: 'Hours on the unit, h', value: (row) => row.unitHours },
      { header: 'Hours are', value: (row) => (row.hoursDerived ? 'derived' : null) },
    ],
    value: (row) => row.unitHours,
    cell: (row) => <Written text={hoursText(row)} reason="hours cannot be derived" />,
  },
  { id: 'position', header: 'Site / engine / bank', term: 'position', value: position },
  { id: 'workshop', header: 'Workshop', value: (row) => row.workshop },
  { id: 'kind', header: 'Kind', value: (row) => row.kind },
  { id: 'fitted', header: 'Fitted', value: (row) => row.fitted },
  { id: 'remarks', header: 'Remarks', text: true, value: (row) => row.remarks },
];
