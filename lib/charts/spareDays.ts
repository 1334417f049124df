import { addMonths, formatISO, parseISO } from 'date-fns';
import type { OrderRow } from '../analysis/demand/types';
import { formatDate } from './format';
import type { ChartTheme, Layer } from './theme';

/** First day of a quarter named as '2027-Q1'. */
export function quarterStart(quarter: string): string {
  const [year = '', number = '1'] = quarter.split('-Q');
  return `${year}-${String(3 * Number(number) - 2).padStart(2, '0')}-01`;
}

/** Where a quarter stands on the axis of days: its bar from one time to another, and its middle. */
export function quarterSpan(quarter: string) {
  const start = quarterStart(quarter);
  const end = formatISO(addMonths(parseISO(start), 3), { representation: 'date' });
  const [from, to] = [Date.parse(start), Date.parse(end)];
  return { from: from + 0.08 * (to - from), to: to - 0.08 * (to - from), middle: (from + to) / 2 };
}

/** The axis of days. */
export function dayAxis(field: string) {
  return {
    field,
    type: 'temporal' as const,
    title: null,
    scale: { type: 'utc' as const, nice: false },
    axis: { grid: false, format: '%Y', tickCount: { interval: 'year' as const, step: 1 } },
  };
}

/** Whole quarters round the horizon. */
function ends(asOf: string, until: string): readonly [number, number] {
  const quarter = (date: string) => `${date.slice(0, 4)}-Q${Math.ceil(Number(date.slice(5, 7)) / 3)}`;
  const after = addMonths(parseISO(quarterStart(quarter(until))), 3);
  return [Date.parse(quarterStart(quarter(asOf))), Date.parse(formatISO(after, { representation: 'date' }))];
}

/** Stretches the axis over whole quarters round the horizon, so that demand and stock stand under each other. */
export function horizonLayer(asOf: string, until: string): Layer {
  return {
    data: { values: ends(asOf, until).map((time) => ({ time })) },
    mark: { type: 'point', opacity: 0 },
    encoding: { x: dayAxis('time') },
  };
}

/** A day that is named in the picture. */
export interface DayMark {
  readonly kind: 'today' | 'order' | 'short' | 'due';
  readonly date: string;
  readonly label: string;
}

/** Today, the last order day, the day on which the part is short and the delivery; a last order day that is past stands on today. */
export function orderMarks(
  { orderBy, late, shortOn, due, quantity }: OrderRow,
  asOf: string,
): readonly DayMark[] {
  const isLate = orderBy !== null && late && quantity > 0;
  const marks: DayMark[] = [
    { kind: isLate ? 'order' : 'today', date: asOf, label: isLate ? 'today: order, late' : 'today' },
  ];
  if (orderBy !== null && quantity > 0 && !isLate)
    marks.push({ kind: 'order', date: orderBy, label: `order by ${formatDate(orderBy)}` });
  if (shortOn !== null)
    marks.push({ kind: 'short', date: shortOn, label: `short on ${formatDate(shortOn)}` });
  if (due !== null) marks.push({ kind: 'due', date: due, label: `due ${formatDate(due)}` });
  return marks;
}

/** Height of one line of labels, px. */
const labelLine_px = 14;

/** Height of both pictures, px. */
export function spareHeight_px(narrow: boolean): number {
  return narrow ? 200 : 220;
}

/** Share of the plot that so many lines of labels take; the plot is lower than the picture by its axis and title. */
export function labelShare(marks: number, narrow: boolean): number {
  return (marks * labelLine_px) / (spareHeight_px(narrow) - 65);
}

/** Room for the numbers of the upright axis, px: the same in both pictures, so that their days stand under each other. */
export const axisExtent = { minExtent: 34 } as const;

/** Upright rules at the days with their labels, each on a line of its own so that none covers another. */
export function dayMarks(
  marks: readonly DayMark[],
  asOf: string,
  until: string,
  theme: ChartTheme,
): readonly Layer[] {
  const [first, last] = ends(asOf, until);
  return marks.flatMap(({ kind, date, label }, line): Layer[] => {
    const time = Date.parse(date);
    const isLate = time - first > 0.7 * (last - first);
    const x = dayAxis('time');
    const data = { values: [{ time, label }] };
    const color = kind === 'order' ? theme.accent : kind === 'today' ? theme.muted : theme.ink;
    return [
      {
        data,
        mark: {
          type: 'rule',
          strokeWidth: 1.5,
          color,
          ...(kind === 'short' || kind === 'due' ? { strokeDash: [3, 3] } : {}),
        },
        encoding: { x },
      },
      {
        data,
        mark: {
          type: 'text',
          align: isLate ? 'right' : 'left',
          dx: isLate ? -4 : 4,
          baseline: 'top',
          fontSize: 11,
        },
        encoding: { x, y: { value: line * labelLine_px }, text: { field: 'label', type: 'nominal' } },
      },
    ];
  });
}

/** What a pointer or a screen reader finds at every row: its hint, over the whole height from one day to the next. */
export function hintLayer(theme: ChartTheme): Layer {
  return {
    data: { name: 'rows' },
    mark: { type: 'rect', color: theme.paper, opacity: 0, aria: true },
    encoding: {
      x: dayAxis('from'),
      x2: { field: 'to' },
      y: { value: 0 },
      y2: { value: 'height' },
      description: { field: 'hint', type: 'nominal' },
    },
  };
}
