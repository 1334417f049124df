import type { SeriesReading } from '../../lib/analysis/types';
import { formatHours, formatLength, formatMm } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';

function valueText(reading: SeriesReading): string {
  if (reading.lower_mm === null || reading.upper_mm === null) return formatMm(reading.value_mm);
  return `${formatLength(reading.lower_mm)} to ${formatMm(reading.upper_mm)}`;
}

/** Columns of the readings of one series, each traced to its file and row. */
export const readingColumns: readonly DataColumn<SeriesReading>[] = [
  { id: 'date', header: 'Date', date: true, rowHeader: true, value: (reading) => reading.date },
  {
    id: 'hours',
    header: 'Hours on the unit',
    unit: 'h',
    numeric: true,
    value: (reading) => reading.unitHours,
    cell: (reading) => formatHours(reading.unitHours),
  },
  {
    id: 'run',
    header: 'Run hours',
    term: 'runHours',
    unit: 'h',
    numeric: true,
    value: (reading) => reading.runHours,
    cell: (reading) => formatHours(reading.runHours),
  },
  {
    id: 'stage',
    header: 'Stage',
    term: 'stage',
    value: (reading) => (reading.stage === 'found' ? 'as found' : 'as left'),
  },
  {
    id: 'value',
    header: 'Value',
    numeric: true,
    saved: [
      { header: 'Value, mm', value: ({ value_mm }) => value_mm },
      { header: 'Lower, mm', value: ({ lower_mm }) => lower_mm },
      { header: 'Upper, mm', value: ({ upper_mm }) => upper_mm },
    ],
    value: (reading) => reading.value_mm,
    cell: valueText,
  },
  { id: 'workshop', header: 'Workshop', value: (reading) => reading.workshop },
  { id: 'file', header: 'Source file', value: (reading) => reading.sourceFile },
  {
    id: 'row',
    header: 'Row',
    numeric: true,
    value: (reading) => reading.sourceRow,
    cell: (reading) => String(reading.sourceRow),
  },
];
