import type { DemandRow, OrderRow } from '../analysis/demand/types';
import { formatCount } from './format';
import { layersWithData } from './layersWithData';
import { axesPicture, titleAbove } from './pictureFrame';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

/** Pieces of a quarter with at most one decimal. */
function pieces(count: number): string {
  return Number.isInteger(count) ? formatCount(count) : count.toFixed(1);
}

/** First day of a quarter named as '2027-Q1'. */
export function quarterStart(quarter: string): string {
  const [year = '', number = '1'] = quarter.split('-Q');
  return `${year}-${String(3 * Number(number) - 2).padStart(2, '0')}-01`;
}

/**
 * Demand of one part by quarter: mean as a bar, 10 to 90 % as a rule, 95 % as a tick; the stock on hand and due if nothing is
 * ordered as a step line that falls with the mean demand, and the last order day as an accent rule.
 */
export function demandPicture(
  demand: readonly DemandRow[],
  order: OrderRow,
  asOf: string,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const rows = demand.map((row) => ({
    ...row,
    time: Date.parse(quarterStart(row.quarter)),
    hint: `${row.quarter}: mean ${row.mean.toFixed(1)}, 10 to 90 % ${pieces(row.p10)} to ${pieces(row.p90)}, 95 % ${pieces(row.p95)}`,
  }));
  let used = 0;
  const stock = rows.map(({ time, mean, quarter }, index) => {
    const day = index === 0 ? asOf : quarterStart(quarter);
    const delivered = order.due !== null && order.due <= day ? order.onOrder : 0;
    const point = { time: index === 0 ? Date.parse(asOf) : time, stock: order.onHand + delivered - used };
    used += mean;
    return point;
  });
  const marks = [
    { date: asOf, label: 'today', kind: 'today' },
    ...(order.orderBy === null
      ? []
      : [
          {
            date: order.orderBy < asOf ? asOf : order.orderBy,
            label: order.late ? 'order now, late' : `order by ${order.orderBy}`,
            kind: 'order',
          },
        ]),
  ].map((mark) => ({ ...mark, time: Date.parse(mark.date) }));
  const drawn = layersWithData(layersOf(theme), { rows, stock, zero: [{ zero: 0 }], marks });
  return axesPicture(narrow ? 240 : 280, 14, theme, drawn);
}

function layersOf(theme: ChartTheme): Layer[] {
  const x = {
    field: 'time',
    type: 'temporal' as const,
    title: null,
    scale: { type: 'utc' as const, nice: false, padding: 14 },
    axis: { grid: false, format: '%Y', tickCount: { interval: 'year' as const, step: 1 } },
  };
  const y = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title: 'pieces a quarter; pieces in stock',
    scale: { zero: true, nice: true },
    axis: {
      ...titleAbove,
      tickCount: 5,
      tickMinStep: 1,
    },
  });
  const description = { field: 'hint', type: 'nominal' as const };
  return [
    { data: { name: 'zero' }, mark: { type: 'rule', color: theme.muted }, encoding: { y: y('zero') } },
    {
      data: { name: 'rows' },
      mark: { type: 'bar', width: 12, color: theme.hue, opacity: 0.45, aria: true },
      encoding: { x, y: y('mean'), description },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'rule', color: theme.ink, strokeWidth: 2 },
      encoding: { x, y: y('p10'), y2: { field: 'p90' } },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'tick', orient: 'horizontal', width: 10, thickness: 2, color: theme.ink, opacity: 1 },
      encoding: { x, y: y('p95') },
    },
    {
      data: { name: 'stock' },
      mark: {
        type: 'line',
        interpolate: 'step-after',
        color: theme.ink,
        strokeWidth: 1.5,
        strokeDash: [6, 3],
      },
      encoding: { x, y: y('stock') },
    },
    {
      data: { name: 'marks' },
      mark: { type: 'rule', strokeWidth: 1.5 },
      encoding: {
        x,
        color: {
          field: 'kind',
          type: 'nominal',
          scale: { domain: ['today', 'order'], range: [theme.muted, theme.accent] },
          legend: null,
        },
      },
    },
    {
      data: { name: 'marks' },
      mark: { type: 'text', angle: 270, align: 'right', dx: -4, dy: 12, fontSize: 11 },
      encoding: { x, y: { value: 0 }, text: { field: 'label', type: 'nominal' } },
    },
  ];
}
