import type { OrderRow, Spares, StockRow } from '../analysis/demand/types';
import { formatDate, formatPercent, formatPieces } from './format';
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
  spareHeight_px,
} from './spareDays';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

/**
 * Stock of one part if nothing is ordered, quarter by quarter: the median, and what is left or more with the service level, with
 * the band between; zero as the accent rule below which pieces are lacking. Days of order, shortage and delivery as upright rules.
 */
export function stockPicture(
  stock: readonly StockRow[],
  order: OrderRow,
  { asOf, until, settings }: Pick<Spares, 'asOf' | 'until' | 'settings'>,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const level = formatPercent(settings.serviceLevel);
  const rows = stock.map((row, index) => ({
    ...row,
    from: Date.parse(stock[index - 1]?.date ?? asOf),
    to: Date.parse(row.date),
    hint: `At the end of ${formatDate(row.date)}: ${stockWords(row.median)} at the median, ${stockWords(row.atServiceLevel)} at ${level}`,
  }));
  const marks = orderMarks(order, asOf);
  const most = rows.reduce((highest, { median }) => Math.max(highest, median), 1);
  const least = rows.reduce((lowest, { atServiceLevel }) => Math.min(lowest, atServiceLevel), 0);
  const room = labelShare(marks.length, narrow);
  const last = rows.at(-1);
  const ends =
    last === undefined
      ? []
      : [
          { to: last.to, value: last.median, name: 'median' },
          { to: last.to, value: last.atServiceLevel, name: level },
        ].slice(0, last.median === last.atServiceLevel ? 1 : 2);
  const drawn = layersWithData(
    [
      horizonLayer(asOf, until),
      ...layersOf([1.05 * least, most + ((most - least) * room) / (1 - room)], theme),
      ...dayMarks(marks, asOf, until, theme),
    ],
    { rows, zero: [{ zero: 0 }], ends },
  );
  return axesPicture(spareHeight_px(narrow), 60, theme, drawn);
}

/** Pieces left or lacking, in words. */
export function stockWords(pieces: number): string {
  return pieces < 0 ? `${formatPieces(-pieces)} lacking` : `${formatPieces(pieces)} left`;
}

function layersOf(domain: [number, number], theme: ChartTheme): Layer[] {
  const x = dayAxis;
  const y = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title: 'pieces in stock if nothing is ordered',
    scale: { domain, nice: false },
    axis: { ...titleAbove, ...axisExtent, tickCount: 5, tickMinStep: 1, format: 'd' },
  });
  const line = (field: string, dashed: boolean): Layer => ({
    data: { name: 'rows' },
    mark: { type: 'rule', color: theme.ink, strokeWidth: 1.5, ...(dashed ? { strokeDash: [5, 3] } : {}) },
    encoding: { x: x('from'), x2: { field: 'to' }, y: y(field) },
  });
  return [
    {
      data: { name: 'rows' },
      mark: { type: 'rect', color: theme.hue, opacity: 0.3 },
      encoding: { x: x('from'), x2: { field: 'to' }, y: y('median'), y2: { field: 'atServiceLevel' } },
    },
    { data: { name: 'zero' }, mark: { type: 'rule', color: theme.accent }, encoding: { y: y('zero') } },
    line('median', true),
    line('atServiceLevel', false),
    {
      data: { name: 'ends' },
      mark: { type: 'text', align: 'left', dx: 4, fontSize: 11 },
      encoding: { x: x('to'), y: y('value'), text: { field: 'name', type: 'nominal' } },
    },
    hintLayer(theme),
  ];
}
