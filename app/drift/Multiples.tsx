'use client';

import { useMemo } from 'react';
import type { ChartedSeries, DriftResult } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { type Multiple, multiplesHeight_px, smallMultiples } from '../../lib/charts/smallMultiples';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import { Pager } from '../frame/Pager';
import { usePaged } from '../frame/usePaged';
import { DataTable } from '../table/DataTable';
import { counted } from '../words/counted';
import { seriesName } from '../words/seriesName';
import { multipleColumns, multipleRow } from './multipleColumns';

const cellsPerPicture = 64;

interface MultiplesProps {
  readonly fleet: FleetResult;
  readonly result: DriftResult;
  readonly series: string;
  readonly onPick: (unit: string) => void;
}

function Cells({
  charts,
  result,
  title,
  onPick,
}: Omit<MultiplesProps, 'fleet' | 'series'> & {
  readonly charts: readonly ChartedSeries[];
  readonly title: string;
}) {
  const { first, shown, onPage } = usePaged(charts, cellsPerPicture);
  const multiples = useMemo(
    () =>
      shown.map(
        (series): Multiple => ({
          series,
          found: result.findings.some((one) => one.unit === series.unit && one.series === series.series),
        }),
      ),
    [shown, result],
  );
  const sides = charts[0]?.sides;
  const threshold =
    result.thresholds.find((one) => one.chart === 'individuals' && one.sides === sides)?.threshold ?? null;
  const build = useMemo<BuildSpec>(
    () => (theme, narrow) => smallMultiples(multiples, threshold, theme, narrow),
    [multiples, threshold],
  );
  const rows = useMemo(() => multiples.map(multipleRow), [multiples]);
  const found = multiples.filter((one) => one.found).map(({ series }) => series.unit);
  return (
    <figure>
      <figcaption>
        <p>
          One cell a unit, all on the same scales: forecast residuals over the years. Accent lines: threshold
          of a single reading. Diamonds: beyond it. Framed: some chart has a signal. A click shows the unit
          below.
        </p>
      </figcaption>
      <Chart
        build={build}
        label={title}
        description={
          found.length === 0
            ? `None of ${counted(multiples.length, 'unit')} has a signal.`
            : `With a signal: ${found.join(', ')}. The other units have none.`
        }
        height_px={multiplesHeight_px(multiples.length, false)}
        onPick={onPick}
      />
      <Pager
        first={first}
        shown={multiples.length}
        total={charts.length}
        step={cellsPerPicture}
        noun="unit"
        onPage={onPage}
      />
      <details>
        <summary>The numbers by unit</summary>
        <DataTable
          caption={`Forecast residuals by unit: ${title}`}
          columns={multipleColumns}
          rows={rows}
          rowKey={({ unit }) => unit}
          empty="No unit is drawn."
        />
      </details>
    </figure>
  );
}

/** Forecast residuals of all units in one series, side by side. */
export function Multiples({ fleet, result, series, onPick }: MultiplesProps) {
  const asked = useAsked(fleet, 'charts', series);
  const title = `All units: ${seriesName(series, fleet.characteristics)}`;
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <WithAnswer asked={asked}>
        {(charts) =>
          charts.length === 0 ? (
            <p>No reading of this series can be compared with a forecast.</p>
          ) : (
            <Cells charts={charts} result={result} title={title} onPick={onPick} />
          )
        }
      </WithAnswer>
    </section>
  );
}
