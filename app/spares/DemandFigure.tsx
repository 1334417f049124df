'use client';

import { useMemo } from 'react';
import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import { demandDescription, demandPicture } from '../../lib/charts/demandPicture';
import { formatDate, formatPercent } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { stockPicture, stockWords } from '../../lib/charts/stockPicture';
import { Chart } from '../chart/Chart';
import type { BuildSpec } from '../chart/useDrawing';
import { DataTable } from '../table/DataTable';
import { capitalised } from '../words/seriesName';
import { partWords } from '../words/sparesSentence';
import { demandColumns, stockColumns } from './demandColumns';

interface DemandFigureProps {
  readonly spares: Spares;
  readonly order: OrderRow;
  readonly onPart: (part: string) => void;
}

/** Demand of one part by quarter with its spread, under it its stock if nothing is ordered, with the order day. */
export function DemandFigure({ spares, order, onPart }: DemandFigureProps) {
  const demand = useMemo(() => spares.demand.filter(({ part }) => part === order.part), [spares, order]);
  const stock = useMemo(() => spares.stock.filter(({ part }) => part === order.part), [spares, order]);
  const buildDemand = useMemo<BuildSpec>(
    () => (theme, narrow) => demandPicture(demand, order, spares, theme, narrow),
    [demand, order, spares],
  );
  const buildStock = useMemo<BuildSpec>(
    () => (theme, narrow) => stockPicture(stock, order, spares, theme, narrow),
    [stock, order, spares],
  );
  const title = `Demand of ${partWords(order)}`;
  const level = formatPercent(spares.settings.serviceLevel);
  const columns = useMemo(() => stockColumns(level), [level]);
  const reason = `${capitalised(rewritten(order.reason))}.`;
  const end = stock.at(-1);
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
            {reason} Above: bars are the mean demand of a quarter, points its median, rules 10 to 90&nbsp;%,
            ticks 95&nbsp;%. Below: stock at the end of each quarter if nothing is ordered; dashed the median,
            solid what is left or more with {level}; under the accent line pieces are lacking.
          </p>
        </figcaption>
        <Chart
          build={buildDemand}
          label={title}
          description={demandDescription(demand, order)}
          height_px={220}
        />
        <Chart
          build={buildStock}
          label={`Stock of ${partWords(order)} if nothing is ordered`}
          description={`${reason}${end === undefined ? '' : ` On ${formatDate(end.date)}: ${stockWords(end.median)} at the median.`}`}
          height_px={220}
        />
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
        <DataTable
          caption={`Stock of ${partWords(order)} if nothing is ordered, pieces; negative where they are lacking`}
          columns={columns}
          rows={stock}
          rowKey={({ date }) => date}
          empty="Nothing is known of the stock of this part."
        />
      </details>
    </section>
  );
}
