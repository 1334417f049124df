import { layersWithData } from './layersWithData';
import { rowEnds, rowPicture } from './pictureFrame';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

const rowStep = 22;

/** One unit's value with its 80 and 95 % intervals, what it says in words, and a note at its right where it stands out. */
export interface UnitInterval {
  readonly unit: string;
  readonly median: number;
  readonly lower80: number;
  readonly upper80: number;
  readonly lower95: number;
  readonly upper95: number;
  readonly hint: string;
  readonly note: string;
}

/**
 * One row a unit: median as a tick, 80 % interval as a thick rule, 95 % as a thin one, against the sisters' own value as an
 * upright rule.
 */
export function unitIntervals(
  rows: readonly UnitInterval[],
  sisters: number,
  title: string,
  theme: ChartTheme,
): LayeredSpec {
  const data = rows.map((row) => ({ ...row, pick: `#${encodeURIComponent(row.unit)}` }));
  const drawn = layersWithData(layersOf(title, theme), { rows: data, same: [{ at: sisters }] });
  return rowPicture(Math.max(1, rows.length) * rowStep, theme, drawn);
}

/** Height of the picture of so many units, px. */
export function unitIntervalsHeight_px(units: number): number {
  return units * rowStep + 50;
}

function layersOf(title: string, theme: ChartTheme): Layer[] {
  const unit = { field: 'unit', type: 'nominal' as const, sort: null, axis: null };
  const x = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title,
    scale: { zero: false, nice: true },
    axis: { orient: 'top' as const, grid: true, tickCount: 6, titleAnchor: 'start' as const },
  });
  const rule = { type: 'rule' as const, color: theme.ink };
  return [
    {
      data: { name: 'same' },
      mark: { type: 'rule', color: theme.hue, strokeWidth: 2 },
      encoding: { x: x('at') },
    },
    {
      data: { name: 'rows' },
      mark: { ...rule, strokeWidth: 1 },
      encoding: { y: unit, x: x('lower95'), x2: { field: 'upper95' } },
    },
    {
      data: { name: 'rows' },
      mark: { ...rule, strokeWidth: 5 },
      encoding: { y: unit, x: x('lower80'), x2: { field: 'upper80' } },
    },
    {
      data: { name: 'rows' },
      mark: { type: 'tick', orient: 'vertical', thickness: 3, height: 15, color: theme.ink, opacity: 1 },
      encoding: { y: unit, x: x('median') },
    },
    ...rowEnds(unit, theme, 'bold'),
  ];
}
