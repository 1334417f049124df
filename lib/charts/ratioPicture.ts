import type { SisterRow } from '../analysis/sisters/types';
import { formatProbability, formatRate, formatRatio } from './format';
import { layersWithData } from './layersWithData';
import { rowEnds, rowPicture } from './pictureFrame';
import type { ChartTheme, Layer, LayeredSpec } from './theme';

const rowStep = 22;

/** What the picture measures: the ratio to the sisters' rate, or, where that rate may be zero, the difference from it. */
export type RatioMeasure = 'ratio' | 'difference';

/** The difference is drawn where any unit has no ratio. */
export function ratioMeasure(rows: readonly SisterRow[]): RatioMeasure {
  return rows.every(({ rate }) => rate.ratio !== null) ? 'ratio' : 'difference';
}

function intervalOf({ rate }: SisterRow, measure: RatioMeasure) {
  return measure === 'ratio' && rate.ratio !== null ? rate.ratio : rate.difference_mm_per_10kh;
}

/** What one row says, in words. */
export function ratioHint(row: SisterRow, measure: RatioMeasure): string {
  const { median, lower80, upper80 } = intervalOf(row, measure);
  const said =
    measure === 'ratio'
      ? `${formatRatio(median)} times its sisters' rate (80 %: ${formatRatio(lower80)} to ${formatRatio(upper80)})`
      : `${formatRate(median, null)} from its sisters' rate (80 %: ${formatRate(lower80, null)} to ${formatRate(upper80, null)})`;
  return `${row.unit}: ${said}, q ${formatProbability(row.q)}`;
}

/**
 * One row a unit: median, 80 % interval as a thick rule, 95 % as a thin one, against the sisters' own rate as an upright rule.
 * Rows found unlike (q at or under `findAt`) carry their number in words.
 */
export function ratioPicture(
  rows: readonly SisterRow[],
  measure: RatioMeasure,
  findAt: number,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const data = rows.map((row) => {
    const { median, lower80, upper80, lower95, upper95 } = intervalOf(row, measure);
    const number = measure === 'ratio' ? `× ${formatRatio(median)}` : formatRatio(median);
    return {
      unit: row.unit,
      pick: `#${encodeURIComponent(row.unit)}`,
      median,
      lower80,
      upper80,
      lower95,
      upper95,
      hint: ratioHint(row, measure),
      note: row.q <= findAt ? (narrow ? number : `${number}, q ${formatProbability(row.q)}`) : '',
    };
  });
  return rowPicture(
    Math.max(1, rows.length) * rowStep,
    theme,
    layersWithData(layersOf(measure, theme), { rows: data, same: [{ at: measure === 'ratio' ? 1 : 0 }] }),
  );
}

function layersOf(measure: RatioMeasure, theme: ChartTheme): Layer[] {
  const unit = { field: 'unit', type: 'nominal' as const, sort: null, axis: null };
  const x = (field: string) => ({
    field,
    type: 'quantitative' as const,
    title:
      measure === 'ratio'
        ? 'wear rate / rate of its sisters'
        : 'wear rate less that of its sisters, mm per 10 000 h',
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
