import { nice } from 'd3-array';
import type { IntervalPoint } from '../analysis/demand/intervalCurve';
import { formatChance, formatCount, formatFixed, formatHours } from './format';
import { layersWithData } from './layersWithData';
import { axesPicture, titleAbove } from './pictureFrame';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

/** What is drawn against the interval. */
export type IntervalMeasure = 'chance' | 'overhaulsAYear' | 'costAYear';

const titles: Readonly<Record<IntervalMeasure, string>> = {
  chance: 'chance of passing a limit within an interval',
  overhaulsAYear: 'overhauls a year',
  costAYear: 'cost a year',
};

/** Least distance between the names of two groups, px. */
const nameLine_px = 13;

/** What a point says, in words. */
export function intervalHint({ group, interval_h, chance, overhaulsAYear, ...point }: IntervalPoint): string {
  const cost = point.costAYear === null ? '' : `, cost ${formatCount(Math.round(point.costAYear))} a year`;
  const notes = [point.planned && 'as planned', point.extrapolated && 'longer than any run on record'];
  const said = notes.filter((note) => note !== false).join(', ');
  return `${group}, ${formatHours(interval_h)}${said === '' ? '' : ` (${said})`}: ${formatChance(chance)}, ${formatFixed(overhaulsAYear, 1)} overhauls a year${cost}`;
}

/**
 * Chance of passing a limit in service, overhauls or cost a year against the interval, one named line a group. Points at
 * intervals longer than any run on record are hollow; the planned interval is ringed.
 */
export function intervalPicture(
  points: readonly IntervalPoint[],
  measure: IntervalMeasure,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const height = narrow ? 180 : 200;
  const rows = points.flatMap((point) => {
    const value = point[measure];
    return value === null ? [] : [{ ...point, value, hint: intervalHint(point) }];
  });
  const most = rows.reduce((highest, { value }) => Math.max(highest, value), 0);
  const [, top] = nice(0, most > 0 ? most : 0.01, 4);
  const drawn = layersWithData(layersOf(measure, top, theme), {
    rows,
    seen: rows.filter(({ extrapolated }) => !extrapolated),
    beyond: rows.filter(({ extrapolated }) => extrapolated),
    planned: rows.filter(({ planned }) => planned),
  });
  return axesPicture(height, 90, theme, {
    ...drawn,
    layer: [...drawn.layer, ...nameLayers(rows, measure, top, height, theme)],
  });
}

function axes(measure: IntervalMeasure, top: number) {
  const x = {
    field: 'interval_h',
    type: 'quantitative' as const,
    title: 'hours between overhauls, h',
    scale: { zero: false, nice: false },
    axis: { grid: false, tickCount: 6, format: ',.0f' },
  };
  const y = {
    field: 'value',
    type: 'quantitative' as const,
    title: titles[measure],
    scale: { domain: [0, top], nice: false },
    axis: {
      ...titleAbove,
      tickCount: 4,
      ...(measure === 'chance' ? { format: '.0%' } : { format: ',.0f' }),
    },
  };
  return { x, y };
}

function layersOf(measure: IntervalMeasure, top: number, theme: ChartTheme): Layer[] {
  const { x, y } = axes(measure, top);
  const description = { field: 'hint', type: 'nominal' as const };
  const point = (name: string, fill: string): Layer => ({
    data: { name },
    mark: { type: 'point', shape: 'circle', size: 34, fill, stroke: theme.ink, opacity: 1, aria: true },
    encoding: { x, y, description },
  });
  return [
    {
      data: { name: 'rows' },
      mark: { type: 'line', color: theme.ink, strokeWidth: 1.5 },
      encoding: { x, y, detail: { field: 'group', type: 'nominal' } },
    },
    point('seen', theme.ink),
    point('beyond', theme.paper),
    {
      data: { name: 'planned' },
      mark: { type: 'point', shape: 'circle', size: 160, fill: null, stroke: theme.ink, strokeWidth: 2 },
      encoding: { x, y },
    },
  ];
}

/** The groups' names at the ends of their lines, moved down where they would cover one another. */
function nameLayers(
  rows: readonly (IntervalPoint & { readonly value: number })[],
  measure: IntervalMeasure,
  top: number,
  height: number,
  theme: ChartTheme,
): readonly Layer[] {
  const { x, y } = axes(measure, top);
  const ends = [...new Map(rows.map((row) => [row.group, row])).values()].sort((a, b) => b.value - a.value);
  let least = Number.NEGATIVE_INFINITY;
  return ends.map((row) => {
    // The plot is lower than the picture by its axis and titles.
    const at = (1 - row.value / top) * (height - 70);
    const moved = Math.max(at, least);
    least = moved + nameLine_px;
    return {
      data: { values: [{ interval_h: row.interval_h, value: row.value, group: row.group }] },
      mark: { type: 'text', align: 'left', dx: 8, dy: moved - at, fontSize: 11, color: theme.ink },
      encoding: { x, y, text: { field: 'group', type: 'nominal' } },
    } as const;
  });
}
