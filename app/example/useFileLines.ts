'use client';

import { useEffect, useState } from 'react';
import type { SeriesReading } from '../../lib/analysis/types';
import { useEngine } from '../engine/EngineProvider';

/** Name of the line that a reading stands in. */
export function lineName({ sourceFile, sourceRow }: SeriesReading): string {
  return `${sourceFile} ${sourceRow}`;
}

/** The lines of one's own files that readings stand in, by name, as they come; nothing for a file that is not kept here. */
export function useFileLines(readings: readonly SeriesReading[]): ReadonlyMap<string, string> {
  const { request } = useEngine();
  const [lines, setLines] = useState<ReadonlyMap<string, string>>(new Map());
  useEffect(() => {
    let stale = false;
    const asked = readings.map(async (reading) => {
      const text = await request.fileLine(reading.sourceFile, reading.sourceRow);
      return text === null ? [] : [[lineName(reading), text] as const];
    });
    Promise.all(asked).then(
      (found) => !stale && setLines(new Map(found.flat())),
      // Without the file its name and line still stand in the table.
      () => !stale && setLines(new Map()),
    );
    return () => {
      stale = true;
    };
  }, [request, readings]);
  return lines;
}
