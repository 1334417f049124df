'use client';

import Link from 'next/link';
import type {
  GaugeRepeatability,
  WorkshopRepeatability,
} from '../../lib/analysis/repeatability/gaugeRepeatability';
import type { FleetResult } from '../../lib/analysis/types';
import { formatCount, formatLength, formatMm } from '../../lib/charts/format';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { gaugeSentence, noiseWords } from '../words/gaugeSentence';

const sameReadings = 'both readings of every pair are the same';

const columns: readonly DataColumn<WorkshopRepeatability>[] = [
  { id: 'workshop', header: 'Workshop', rowHeader: true, value: ({ workshop }) => workshop },
  {
    id: 'pairs',
    header: 'Pairs',
    numeric: true,
    value: ({ pairs }) => pairs,
    cell: ({ pairs }) => formatCount(pairs),
  },
  {
    id: 'sd',
    header: 'One reading, SD',
    unit: 'mm',
    numeric: true,
    value: ({ result }) => result?.sd_mm ?? null,
    cell: ({ result }) => (
      <Written text={result === null ? null : formatMm(result.sd_mm)} reason={sameReadings} />
    ),
  },
  {
    id: 'interval',
    header: '90 % interval',
    numeric: true,
    saved: [
      { header: '90 % interval from, mm', value: ({ result }) => result?.lower_mm ?? null },
      { header: '90 % interval to, mm', value: ({ result }) => result?.upper_mm ?? null },
    ],
    value: ({ result }) => result?.lower_mm ?? null,
    cell: ({ result }) => (
      <Written
        text={result === null ? null : `${formatLength(result.lower_mm)} to ${formatMm(result.upper_mm)}`}
        reason={sameReadings}
      />
    ),
  },
  {
    id: 'mean',
    header: 'As left less as found, mean',
    unit: 'mm',
    numeric: true,
    value: ({ result }) => result?.meanDifference_mm ?? 0,
    cell: ({ result }) => formatMm(result?.meanDifference_mm ?? 0),
  },
  {
    id: 'shifted',
    header: 'Shifted',
    value: ({ result }) => (result?.shifted === true ? 'yes' : 'no'),
  },
];

/** The workshops and, last, all of them together. */
function rowsOf({ workshops, pairs, pooled }: GaugeRepeatability): readonly WorkshopRepeatability[] {
  return [...workshops, { workshop: 'all together', pairs, result: pooled }];
}

interface GaugePanelProps {
  readonly fleet: FleetResult;
  readonly series: string;
  readonly name: string;
}

/** How far readings of one state repeat, by workshop, with the noise of the fits beside it. */
export function GaugePanel({ fleet, series, name }: GaugePanelProps) {
  const asked = useAsked(fleet, 'repeatability');
  const noise = noiseWords(
    fleet.fits.filter((fit) => fit.series === series).map(({ sdNoise_mm }) => sdNoise_mm),
  );
  return (
    <section aria-label="Gauge repeatability">
      <h2>Gauge repeatability</h2>
      <WithAnswer asked={asked}>
        {(gauges) => {
          const gauge = gauges.find((one) => one.series === series);
          return (
            <>
              <p>
                {gaugeSentence(name, gauge, noise)}{' '}
                <Link href="/methods/#repeatability">How this was computed</Link>
              </p>
              {gauge !== undefined && (
                <DataTable
                  caption={`How far readings of ${name} repeat`}
                  columns={columns}
                  rows={rowsOf(gauge)}
                  rowKey={({ workshop }) => workshop}
                  empty="There are no pairs."
                />
              )}
            </>
          );
        }}
      </WithAnswer>
    </section>
  );
}
