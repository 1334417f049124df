'use client';

import { useMemo } from 'react';
import type { SeriesReading } from '../../lib/analysis/types';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { readingColumns } from '../unit/readingColumns';
import { lineName, useFileLines } from './useFileLines';

interface RunReadingsProps {
  readonly caption: string;
  readonly readings: readonly SeriesReading[];
}

/** Readings with the lines of the files that they stand in, where the file is kept in this browser. */
export function RunReadings({ caption, readings }: RunReadingsProps) {
  const lines = useFileLines(readings);
  const columns = useMemo((): readonly DataColumn<SeriesReading>[] => {
    const line: DataColumn<SeriesReading> = {
      id: 'line',
      header: 'The line as it stands',
      text: true,
      value: (reading) => lines.get(lineName(reading)) ?? null,
    };
    return lines.size === 0 ? readingColumns : [...readingColumns, line];
  }, [lines]);
  return (
    <DataTable
      caption={caption}
      columns={columns}
      rows={readings}
      rowKey={(reading, index) => `${reading.overhaul} ${reading.stage} ${index}`}
      empty="The present run has no reading yet."
    />
  );
}
