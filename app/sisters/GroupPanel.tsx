'use client';

import type { SisterGroup } from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import type { FunnelMeasure } from '../../lib/charts/funnelPicture';
import { rewritten } from '../../lib/charts/rewritten';
import { DataTable } from '../table/DataTable';
import { counted } from '../words/counted';
import { capitalised, midSentence, seriesName } from '../words/seriesName';
import { FunnelFigure } from './FunnelFigure';
import { RatioFigure } from './RatioFigure';
import { StartFigure } from './StartFigure';
import { rateColumns, startColumns } from './sisterColumns';

interface GroupPanelProps {
  readonly group: SisterGroup;
  readonly measure: FunnelMeasure;
  readonly characteristics: FleetResult['characteristics'];
}

function Rates({ group, title }: { readonly group: SisterGroup; readonly title: string }) {
  return (
    <>
      <RatioFigure rows={group.rows} title={`Wear rate against sisters: ${title}`} />
      {group.rates !== null && (
        <FunnelFigure
          funnel={group.rates}
          measure="rate"
          title={`Own wear rate against how well it is known: ${title}`}
        />
      )}
      <DataTable
        caption={`Wear rates of ${title}`}
        columns={rateColumns}
        rows={group.rows}
        rowKey={(row) => row.unit}
        empty="No unit of this group has a reading."
      />
    </>
  );
}

function Starts({ group, title }: { readonly group: SisterGroup; readonly title: string }) {
  if (group.starts === null) return null;
  return (
    <>
      {group.startRows.length > 0 && (
        <StartFigure rows={group.startRows} title={`Start level against sisters: ${title}`} />
      )}
      <FunnelFigure
        funnel={group.starts}
        measure="start"
        title={`Own start level against how well it is known: ${title}`}
      />
      <DataTable
        caption={`Start levels of ${title}`}
        columns={startColumns}
        rows={group.startRows}
        rowKey={(row) => row.unit}
        empty="No unit of this group has a start level of its own: that needs a reading at 0 run hours, or two in one run."
      />
    </>
  );
}

/** One sister group in one series: its units against their sisters, the funnel, the numbers. */
export function GroupPanel({ group, measure, characteristics }: GroupPanelProps) {
  const name = midSentence(seriesName(group.series, characteristics));
  const title = `${group.group}, ${name}`;
  return (
    <section aria-label={title}>
      <h2>{capitalised(title)}</h2>
      {group.reason !== null && <p>No comparison: {rewritten(group.reason)}.</p>}
      {group.reason === null && group.rates === null && (
        <p>
          {counted(group.rows.length, 'unit')} cannot show how much sisters differ among themselves, so there
          are neither funnels nor start levels compared; the intervals of the wear rates allow for it. Larger
          groups, by frame, show more.
        </p>
      )}
      {group.reason === null && measure === 'rate' && <Rates group={group} title={title} />}
      {group.reason === null && measure === 'start' && <Starts group={group} title={title} />}
    </section>
  );
}
