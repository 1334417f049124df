'use client';

import type { Workshop, WorkshopFrame } from '../../lib/analysis/drift/types';
import type { FleetResult } from '../../lib/analysis/types';
import { workshopPanel } from '../../lib/charts/driftPanels';
import { formatCount, formatLength, formatLevel, formatRatio } from '../../lib/charts/format';
import { useAsked } from '../engine/useAsked';
import { WithAnswer } from '../engine/WithAnswer';
import type { DataColumn } from '../table/DataColumn';
import { DataTable } from '../table/DataTable';
import { Written } from '../table/Written';
import { seriesName } from '../words/seriesName';
import { differenceSentence } from '../words/sistersSentence';
import { useWrittenMemo } from '../writing/useWriting';
import { Panel } from './Panel';

type Row = WorkshopFrame & { readonly workshop: string };

function rangeText({ lower_mm, upper_mm }: Row): string | null {
  if (lower_mm === null) return upper_mm === null ? null : `up to ${formatLength(upper_mm)} mm`;
  return upper_mm === null
    ? `from ${formatLength(lower_mm)} mm`
    : `${formatLength(lower_mm)} to ${formatLength(upper_mm)} mm`;
}

const columns: readonly DataColumn<Row>[] = [
  { id: 'workshop', header: 'Workshop', rowHeader: true, value: ({ workshop }) => workshop },
  { id: 'frame', header: 'Frame', value: ({ frame }) => frame },
  {
    id: 'readings',
    header: 'Readings as left, new',
    numeric: true,
    value: ({ readings }) => readings,
    cell: ({ readings }) => formatCount(readings),
  },
  {
    id: 'mean',
    header: 'Mean ± SD',
    numeric: true,
    saved: [
      { header: 'Mean, mm', value: ({ performance }) => performance?.mean ?? null },
      { header: 'SD, mm', value: ({ performance }) => performance?.sd ?? null },
    ],
    value: ({ performance }) => performance?.mean ?? null,
    cell: ({ performance, reason }) => (
      <Written
        text={performance === null ? null : formatLevel(performance.mean, performance.sd)}
        reason={reason ?? 'not known'}
      />
    ),
  },
  {
    id: 'range',
    header: 'Assembly range',
    numeric: true,
    saved: [
      { header: 'Assembly range from, mm', value: ({ lower_mm }) => lower_mm },
      { header: 'Assembly range to, mm', value: ({ upper_mm }) => upper_mm },
    ],
    value: ({ upper_mm }) => upper_mm,
    cell: (row) => <Written text={rangeText(row)} reason={row.reason ?? 'not given'} />,
  },
  {
    id: 'ppk',
    header: 'Ppk (90 % interval)',
    numeric: true,
    saved: [
      { header: 'Ppk', value: ({ performance }) => performance?.ppk ?? null },
      { header: 'Ppk, 90 % interval from', value: ({ performance }) => performance?.lower ?? null },
      { header: 'Ppk, 90 % interval to', value: ({ performance }) => performance?.upper ?? null },
    ],
    value: ({ performance }) => performance?.ppk ?? null,
    cell: ({ performance, reason }) => (
      <Written
        text={
          performance === null
            ? null
            : `${formatRatio(performance.ppk)} (${formatRatio(performance.lower)} to ${formatRatio(performance.upper)})`
        }
        reason={reason ?? 'not known'}
      />
    ),
  },
];

function WorkshopChart({ workshop }: { readonly workshop: Workshop }) {
  const input = useWrittenMemo(() => workshopPanel(workshop), [workshop]);
  return <Panel heading={`${workshop.workshop}: readings as left`} input={input} />;
}

/** Whether some workshop's readings as left lie high or low, by simultaneous limits. */
function WorkshopMeans({ fleet, series }: { readonly fleet: FleetResult; readonly series: string }) {
  const asked = useAsked(fleet, 'differences', 'frame');
  return (
    <WithAnswer asked={asked}>
      {(differences) =>
        differences
          .filter((one) => one.factor === 'workshop' && one.series === series)
          .map((one) => <p key={one.compared}>{differenceSentence(one)}</p>)
      }
    </WithAnswer>
  );
}

/** What each workshop leaves behind in the series: charts over time, and capability against the assembly range. */
export function Workshops({ fleet, series }: { readonly fleet: FleetResult; readonly series: string }) {
  const asked = useAsked(fleet, 'workshops', series);
  return (
    <section aria-label="Workshops as left">
      <h2>Workshops as left: {seriesName(series, fleet.characteristics)}</h2>
      <WithAnswer asked={asked}>
        {(workshops) =>
          workshops.length === 0 ? (
            <p>
              No reading as left of this series both names its workshop and can be compared with a forecast.
            </p>
          ) : (
            <>
              <p>
                Residuals of what each workshop left, against what was foretold of it: a mean off zero is a
                habit of the workshop, its gauge or its units. The page ‘Sisters’ compares the means with
                simultaneous limits. The capability counts readings at 0 run hours only.
              </p>
              <WorkshopMeans fleet={fleet} series={series} />
              {workshops.map((workshop) => (
                <WorkshopChart key={workshop.workshop} workshop={workshop} />
              ))}
              <DataTable
                caption="Capability of readings as left against the assembly range"
                columns={columns}
                rows={workshops.flatMap(({ workshop, frames }) =>
                  frames.map((frame) => ({ ...frame, workshop })),
                )}
                rowKey={({ workshop, frame }) => `${workshop} ${frame}`}
                empty="There is no reading as left."
              />
            </>
          )
        }
      </WithAnswer>
    </section>
  );
}
