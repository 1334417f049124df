import type { IntervalPoint } from '../analysis/demand/intervalCurve';
import { formatChance, formatHours } from './format';
import { layersWithData } from './layersWithData';
import { type ChartTheme, chartConfig, type LayeredSpec, schema } from './theme';

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
      titleAngle: 0,
      titleAlign: 'left' as const,
      titleAnchor: 'end' as const,
      titleX: 0,
      titleY: -12,
      tickCount: 5,
      format: '.0%',
    },
  };
  const detail = { field: 'group', type: 'nominal' as const };
  const { layer, datasets } = layersWithData(
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
  return {
    $schema: schema,
    config: chartConfig(theme),
    width: 600,
    height: narrow ? 240 : 280,
    autosize: { type: 'fit', contains: 'padding' },
    padding: { left: 4, top: 22, bottom: 4, right: 70 },
    datasets,
    layer,
  };
}
