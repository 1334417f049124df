import type { FactorDifference } from '../analysis/sisters/types';
import { formatCount, formatScore } from './format';
import { layersWithData } from './layersWithData';
import { rowPicture } from './pictureFrame';
import { symbols } from './symbols';
import type { ChartTheme, LayeredSpec } from './theme';

const rowStep = 28;

/** What one level says, in words. */
export function meanHint({
  level,
  mean,
  lower,
  upper,
  outside,
  count,
}: FactorDifference['levels'][number]): string {
  const verdict = outside === 'none' ? 'within' : outside === 'upper' ? 'above' : 'below';
  return `${level}: mean ${formatScore(mean)} SD of ${formatCount(count)}, ${verdict} the limits ${formatScore(lower)} to ${formatScore(upper)}`;
}

/** Mean of each level as a point, with the limits that all means keep at once as a bar; a mean outside is filled. */
export function meansPicture({ levels }: FactorDifference, theme: ChartTheme): LayeredSpec {
  const rows = levels.map((level) => ({ ...level, hint: meanHint(level) }));
  const y = {
    field: 'level',
    type: 'nominal' as const,
    sort: null,
    title: null,
    axis: { labelLimit: 150, grid: false },
  };
  const x = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title: 'mean, in standard deviations of one value',
    scale: { zero: true, nice: true },
    axis: { tickCount: 6, titleAnchor: 'start' as const },
  });
  const point = {
    type: 'point' as const,
    shape: symbols.found,
    size: 110,
    stroke: theme.ink,
    strokeWidth: 1.5,
    opacity: 1,
    aria: true,
  };
  const encoding = { y, x: x('mean'), description: { field: 'hint', type: 'nominal' as const } };
  const drawn = layersWithData(
    [
      {
        data: { name: 'rows' },
        mark: { type: 'rule', color: theme.hue, opacity: 0.35, strokeWidth: 14 },
        encoding: { y, x: x('lower'), x2: { field: 'upper' } },
      },
      { data: { name: 'within' }, mark: { ...point, fill: theme.paper }, encoding },
      { data: { name: 'outside' }, mark: { ...point, fill: theme.ink }, encoding },
    ],
    {
      rows,
      within: rows.filter(({ outside }) => outside === 'none'),
      outside: rows.filter(({ outside }) => outside !== 'none'),
    },
  );
  return rowPicture(Math.max(1, rows.length) * rowStep, theme, drawn);
}
