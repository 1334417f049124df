'use client';

import type { ChartedReading, UnitCharts } from '../../lib/analysis/drift/types';
import {
  cusumPanel,
  ewmaPanel,
  individualsPanel,
  movingRangePanel,
  readingsPanel,
} from '../../lib/charts/driftPanels';
import { formatMm, formatScore } from '../../lib/charts/format';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { useWrittenMemo } from '../writing/useWriting';
import { MovingRangeControls } from './MovingRangeControls';
import { Panel } from './Panel';

const columns: readonly DataColumn<ChartedReading>[] = [
  { id: 'date', header: 'Date', date: true, rowHeader: true, value: ({ date }) => date },
  { id: 'stage', header: 'Stage', value: ({ stage }) => (stage === 'found' ? 'as found' : 'as left') },
  {
    id: 'value',
    header: 'Reading',
    unit: 'mm',
    numeric: true,
    value: ({ value_mm }) => value_mm,
    cell: ({ value_mm }) => formatMm(value_mm),
  },
  {
    id: 'foretold',
    header: 'Foretold',
    unit: 'mm',
    numeric: true,
    value: ({ foretold_mm }) => foretold_mm,
    cell: ({ foretold_mm }) => (
      <Written
        text={foretold_mm === null ? null : formatMm(foretold_mm)}
        reason="nothing could be foretold"
      />
    ),
  },
  {
    id: 'z',
    header: 'z, SD',
    numeric: true,
    value: ({ z }) => z,
    cell: ({ z }) => <Written text={z === null ? null : formatScore(z)} reason="nothing could be foretold" />,
  },
  { id: 'workshop', header: 'Workshop', value: ({ workshop }) => workshop },
];

interface UnitPanelsProps {
  readonly charts: UnitCharts;
  readonly baseline: number | null;
  readonly onChange: (changes: Readonly<Record<string, string>>) => void;
}

/** Readings beside what was foretold, the charts in force, the moving-range chart, and the numbers. */
export function UnitPanels({ charts, baseline, onChange }: UnitPanelsProps) {
  const panels = useWrittenMemo(
    () => [
      { heading: 'Readings (marks) and what was foretold for each (ticks)', input: readingsPanel(charts) },
      { heading: 'Forecast residuals', input: individualsPanel(charts) },
      ...(charts.ewma === null
        ? []
        : [{ heading: 'Weighted moving average of the residuals', input: ewmaPanel(charts) }]),
      ...(charts.cusum === null
        ? []
        : [
            {
              heading: 'Cumulative sums of the residuals: rises above zero, falls below',
              input: cusumPanel(charts),
            },
          ]),
    ],
    [charts],
  );
  const ranges = useWrittenMemo(() => movingRangePanel(charts), [charts]);
  return (
    <>
      <p>
        Discs: as found. Triangles: as left. Blue ticks: foretold. Accent: thresholds; ringed: beyond them.
      </p>
      {panels.map(({ heading, input }) => (
        <Panel key={heading} heading={heading} input={input} />
      ))}
      <details>
        <summary>Readings in mm with limits by their moving range</summary>
        <MovingRangeControls charts={charts} baseline={baseline} onChange={onChange} />
        {charts.movingRange.chart === null ? (
          <p>There are no limits: they need 2 readings of this stage that differ.</p>
        ) : (
          <Panel heading="Individuals, mm" input={ranges} />
        )}
      </details>
      <DataTable
        caption="Readings and their residuals"
        columns={columns}
        rows={charts.series.readings}
        rowKey={({ overhaul, stage }, index) => `${overhaul} ${stage} ${index}`}
        empty="There is no reading."
      />
    </>
  );
}
