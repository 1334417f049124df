import type { IntervalPoint } from '../analysis/demand/intervalCurve';
import { formatChance, formatHours } from './format';
import { layersWithData } from './layersWithData';
import { axesPicture, titleAbove } from './pictureFrame';
import type { ChartTheme, LayeredSpec } from './theme';

/** Chance of passing a limit in service within an interval against the interval, one labelled line a group. */
export function intervalPicture(
  points: readonly IntervalPoint[],
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const rows = points.map((point) => ({
    ...point,
    hint: `${point.group}, ${formatHours(point.interval_h)}: ${formatChance(point.chance)}, ${point.overhaulsAYear.toFixed(1)} overhauls a year`,
  }));
  const last = rows.reduce((most, { interval_h }) => Math.max(most, interval_h), 0);
  const x = {
    field: 'interval_h',
    type: 'quantitative' as const,
    title: 'hours between overhauls, h',
    scale: { zero: false, nice: false },
    axis: { grid: false, tickCount: 6, format: ',.0f', labelExpr: "replace(datum.label, /,/g, '\u202f')" },
  };
  const y = {
    field: 'chance',
    type: 'quantitative' as const,
    title: 'chance of passing a limit within an interval',
    scale: { zero: true, nice: true },
    axis: {
      ...titleAbove,
      tickCount: 5,
      format: '.0%',
    },
  };
  const detail = { field: 'group', type: 'nominal' as const };
  const drawn = layersWithData(
    [
      {
        data: { name: 'rows' },
        mark: { type: 'line', color: theme.ink, strokeWidth: 1.5 },
        encoding: { x, y, detail },
      },
      {
        data: { name: 'rows' },
        mark: {
          type: 'point',
          shape: 'circle',
          size: 30,
          fill: theme.ink,
          stroke: null,
          opacity: 1,
          aria: true,
        },
        encoding: { x, y, detail, description: { field: 'hint', type: 'nominal' } },
      },
      {
        data: { name: 'ends' },
        mark: { type: 'text', align: 'left', dx: 6 },
        encoding: { x, y, text: { field: 'group', type: 'nominal' } },
      },
    ],
    { rows, ends: rows.filter(({ interval_h }) => interval_h === last) },
  );
  return axesPicture(narrow ? 240 : 280, 70, theme, drawn);
}
