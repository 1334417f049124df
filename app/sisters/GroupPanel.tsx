'use client';

import type { SisterGroup } from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import type { FunnelMeasure } from '../../lib/charts/funnelPicture';
import { DataTable } from '../table/DataTable';
import { counted } from '../words/counted';
import { midSentence, seriesName } from '../words/seriesName';
import { fewUnits } from '../words/sistersSentence';
import { FunnelFigure } from './FunnelFigure';
import { RatioFigure } from './RatioFigure';
import { rateColumns, startColumns } from './sisterColumns';

interface GroupPanelProps {
  readonly group: SisterGroup;
  readonly measure: FunnelMeasure;
  readonly characteristics: FleetResult['characteristics'];
}

/** One sister group in one series: its units against their sisters, the funnel, the numbers. */
export function GroupPanel({ group, measure, characteristics }: GroupPanelProps) {
  const name = midSentence(seriesName(group.series, characteristics));
  const title = `${group.group}, ${name}`;
  if (group.reason !== null)
    return (
      <section aria-label={title}>
        <h2>{title}</h2>
        <p>No comparison: {group.reason}.</p>
      </section>
    );
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      {group.rows.length < fewUnits && (
        <p>
          {counted(group.rows.length, 'unit')} cannot show how much sisters differ among themselves: read the
          intervals, not the funnel.
        </p>
      )}
      {measure === 'rate' && <RatioFigure rows={group.rows} title={`Wear rate against sisters: ${title}`} />}
      <FunnelFigure
        funnel={measure === 'rate' ? group.rates : group.starts}
        measure={measure}
        title={`${measure === 'rate' ? 'Own wear rate' : 'Own start level'} against how well it is known: ${title}`}
      />
      {measure === 'rate' ? (
        <DataTable
          caption={`Wear rates of ${title}`}
          columns={rateColumns}
          rows={group.rows}
          rowKey={(row) => row.unit}
          empty="No unit of this group has a reading."
        />
      ) : (
        <DataTable
          caption={`Start levels of ${title}`}
          columns={startColumns}
          rows={group.startRows}
          rowKey={(row) => row.unit}
          empty="No unit of this group has a start level of its own: that needs a reading at 0 run hours, or two in one run."
        />
      )}
    </section>
  );
}
