import type { SisterRow } from '../analysis/sisters/types';
import { formatProbability, formatRate, formatRatio, rateUnit } from './format';
import type { ChartTheme, LayeredSpec } from './theme';
import { unitIntervals } from './unitIntervals';

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

/** Wear rate of each unit against its sisters'; rows found unlike (q at or under `findAt`) carry their number in words. */
export function ratioPicture(
  rows: readonly SisterRow[],
  measure: RatioMeasure,
  findAt: number,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const data = rows.map((row) => {
    const interval = intervalOf(row, measure);
    const number =
      measure === 'ratio' ? `× ${formatRatio(interval.median)}` : formatRate(interval.median, null);
    const note = narrow ? number : `${number}, q ${formatProbability(row.q)}`;
    return { unit: row.unit, ...interval, hint: ratioHint(row, measure), note: row.q <= findAt ? note : '' };
  });
  return measure === 'ratio'
    ? unitIntervals(data, 1, 'wear rate / rate of its sisters', theme)
    : unitIntervals(data, 0, `wear rate less that of its sisters, ${rateUnit()}`, theme);
}
