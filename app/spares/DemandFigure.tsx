'use client';

import { useMemo } from 'react';
import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import { demandPicture } from '../../lib/charts/demandPicture';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { DataTable } from '../table/DataTable';
import { partWords } from '../words/sparesSentence';
import { demandColumns } from './demandColumns';

interface DemandFigureProps {
  readonly spares: Spares;
  readonly order: OrderRow;
  readonly onPart: (part: string) => void;
}

/** Demand of one part by quarter with its spread, its stock if nothing is ordered, and its order day. */
export function DemandFigure({ spares, order, onPart }: DemandFigureProps) {
  const demand = useMemo(() => spares.demand.filter(({ part }) => part === order.part), [spares, order]);
  const build = useMemo<BuildSpec>(
    () => (theme, narrow) => demandPicture(demand, order, spares.asOf, theme, narrow),
    [demand, order, spares.asOf],
  );
  const title = `Demand of ${partWords(order)}`;
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <div className="controls">
        <label>
          Part
          <select value={order.part} onChange={(event) => onPart(event.target.value)}>
            {spares.orders.map((one) => (
              <option key={one.part} value={one.part}>
                {partWords(one)}
              </option>
            ))}
          </select>
        </label>
      </div>
      <figure>
        <figcaption>
          <p>
            {order.reason}. Bars: mean demand of a quarter; rules: 10 to 90&nbsp;%; ticks: 95&nbsp;%. Dashed:
            stock on hand and due at the start of each quarter if nothing is ordered and the mean is used;
            below zero, parts are lacking. Accent: last order day.
          </p>
        </figcaption>
        <Chart build={build} label={title} description={`${order.reason}.`} height_px={280} />
      </figure>
      <details>
        <summary>The numbers by quarter</summary>
        <DataTable
          caption={`${title} by quarter, pieces`}
          columns={demandColumns}
          rows={demand}
          rowKey={({ quarter }) => quarter}
          empty="There is no demand of this part."
        />
      </details>
    </section>
  );
}
