import type { DemandRow, OrderRow, Spares } from '../analysis/demand/types';
import { formatCount, formatFixed, formatPieces } from './format';
import { layersWithData } from './layersWithData';
import { axesPicture, titleAbove } from './pictureFrame';
import {
  axisExtent,
  dayAxis,
  dayMarks,
  hintLayer,
  horizonLayer,
  labelShare,
  orderMarks,
  quarterSpan,
  spareHeight_px,
} from './spareDays';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

/** What a quarter's demand is, in words. */
export function demandHint({ quarter, mean, p10, p50, p90, p95 }: DemandRow): string {
  return `${quarter}: mean ${formatFixed(mean, 1)}, median ${formatPieces(p50)}, 10 to 90 % ${formatPieces(p10)} to ${formatPieces(p90)}, 95 % ${formatPieces(p95)}`;
}

/**
 * Demand of one part by quarter: mean as a bar, 10 to 90 % as a rule, the median as a point, 95 % as a tick; today and the last
 * order day as upright rules.
 */
export function demandPicture(
  demand: readonly DemandRow[],
  order: OrderRow,
  { asOf, until }: Pick<Spares, 'asOf' | 'until'>,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const rows = demand.map((row) => ({ ...row, ...quarterSpan(row.quarter), hint: demandHint(row) }));
  const marks = orderMarks(order, asOf).filter(({ kind }) => kind !== 'short');
  const most = rows.reduce((highest, { p95, mean }) => Math.max(highest, p95, mean), 1);
  // The labels stand above all bars.
  const top = (1.05 * most) / (1 - labelShare(marks.length, narrow));
  const drawn = layersWithData(
    [horizonLayer(asOf, until), ...layersOf(top, theme), ...dayMarks(marks, asOf, until, theme)],
    { rows },
  );
  return axesPicture(spareHeight_px(narrow), 60, theme, drawn);
}

function layersOf(top: number, theme: ChartTheme): Layer[] {
  const x = dayAxis;
  const y = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title: 'pieces a quarter',
    scale: { domainMin: 0, domainMax: top, nice: false },
    axis: { ...titleAbove, ...axisExtent, tickCount: 4, tickMinStep: 1, format: 'd' },
  });
  const data = { name: 'rows' };
  return [
    {
      data,
      mark: { type: 'rect', color: theme.hue, opacity: 0.45 },
      encoding: { x: x('from'), x2: { field: 'to' }, y: y('mean'), y2: { datum: 0 } },
    },
    {
      data,
      mark: { type: 'rule', color: theme.ink, strokeWidth: 2 },
      encoding: { x: x('middle'), y: y('p10'), y2: { field: 'p90' } },
    },
    {
      data,
      mark: { type: 'point', shape: 'circle', size: 36, fill: theme.ink, stroke: null, opacity: 1 },
      encoding: { x: x('middle'), y: y('p50') },
    },
    {
      data,
      mark: { type: 'tick', orient: 'horizontal', width: 12, thickness: 2, color: theme.ink, opacity: 1 },
      encoding: { x: x('middle'), y: y('p95') },
    },
    hintLayer(theme),
  ];
}

/** What a part's whole demand is, in words, for those who do not see the picture. */
export function demandDescription(demand: readonly DemandRow[], order: OrderRow): string {
  const most = demand.reduce<DemandRow | null>(
    (found, row) => (found === null || row.mean > found.mean ? row : found),
    null,
  );
  const total = `${formatFixed(order.demandMean, 1)} pieces in all at the mean, ${formatCount(Math.ceil(order.demandP90))} at 90 %`;
  return most === null || most.mean === 0
    ? 'No demand.'
    : `${total}; most in ${most.quarter}, mean ${formatFixed(most.mean, 1)}.`;
}
