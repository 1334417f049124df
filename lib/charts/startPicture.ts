import type { StartRow } from '../analysis/sisters/types';
import { formatMm, formatProbability } from './format';
import type { ChartTheme, LayeredSpec } from './theme';
import { unitIntervals } from './unitIntervals';

/** What one unit's start level says, in words. */
export function startHint({ unit, difference_mm, interval_mm, sd_mm, q }: StartRow): string {
  const [from, to] = [interval_mm.lower80, interval_mm.upper80].map((end) => formatMm(end, sd_mm));
  return `${unit}: own start ${formatMm(difference_mm, sd_mm)} from its sisters' (80 %: ${from} to ${to}), q ${formatProbability(q)}`;
}

/** Own start level of each unit less its sisters'; rows found unlike (q at or under `findAt`) carry their number in words. */
export function startPicture(
  rows: readonly StartRow[],
  findAt: number,
  theme: ChartTheme,
  narrow: boolean,
): LayeredSpec {
  const data = rows.map((row) => {
    const number = formatMm(row.difference_mm, row.sd_mm);
    const note = narrow ? number : `${number}, q ${formatProbability(row.q)}`;
    return {
      unit: row.unit,
      ...row.interval_mm,
      hint: startHint(row),
      note: row.q <= findAt ? note : '',
    };
  });
  return unitIntervals(data, 0, 'own start level less that of its sisters, mm', theme);
}
