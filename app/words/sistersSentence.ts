import type { FactorDifference, SistersResult } from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatScore } from '../../lib/charts/format';
import type { FunnelMeasure } from '../../lib/charts/funnelPicture';
import { rewritten } from '../../lib/charts/rewritten';
import { counted } from './counted';
import { midSentence, seriesName } from './seriesName';
import { findings, type SisterFinding } from './sisterFindings';

/** The answer of the Sisters page: who wears, or starts, unlike the others in the series shown. */
export function sistersSentence(
  { groups }: SistersResult,
  series: string,
  measure: FunnelMeasure,
  characteristics: FleetResult['characteristics'],
): string {
  const shown = groups.filter((group) => group.series === series);
  const name = midSentence(seriesName(series, characteristics));
  if (shown.every(({ reason }) => reason !== null))
    return `No unit can be compared in ${name}: ${rewritten(shown[0]?.reason ?? 'no group has readings of it')}.`;
  const found = findings(shown, measure);
  const [first, second] = found;
  if (first === undefined) {
    const count = shown.reduce((sum, of) => sum + (measure === 'rate' ? of.rows : of.startRows).length, 0);
    if (count === 0)
      return `In ${name} no start level can be compared: that needs three units of a group with readings of their own.`;
    return measure === 'rate'
      ? `In ${name} no unit of ${counted(count, 'unit')} can be told from its sisters.`
      : `In ${name} no unit of ${counted(count, 'unit')} starts further out than sisters do among themselves.`;
  }
  const others = found.length - (second === undefined ? 1 : 2);
  const names = [first, second].flatMap((one) => one?.words ?? []).join('; ');
  const rest = others > 0 ? `; ${counted(others, 'other unit')} differ${others === 1 ? 's' : ''} less` : '';
  return `In ${name}, ${names}${rest}.`;
}

/** Findings of the other series, one a series: what the choice of series leads to. */
export function otherFindings(
  { groups }: SistersResult,
  series: string,
  measure: FunnelMeasure,
): readonly SisterFinding[] {
  const first = new Map<string, SisterFinding>();
  for (const one of findings(groups, measure))
    if (one.series !== series && !first.has(one.series)) first.set(one.series, one);
  return [...first.values()];
}

/** What a comparison of levels found, as a sentence. */
export function differenceSentence({ factor, compared, levels, reason }: FactorDifference): string {
  const what = compared === 'as left' ? 'readings as left' : compared;
  if (reason !== null) return `By ${factor}, ${what}: ${rewritten(reason)}.`;
  const outside = levels.filter((level) => level.outside !== 'none');
  if (outside.length === 0)
    return `By ${factor}, ${what}: no ${factor} lies outside the limits that all ${counted(levels.length, factor, factor === 'duty' ? 'duties' : `${factor}s`)} keep at once.`;
  const named = outside
    .map(
      ({ level, mean, outside: side, count }) =>
        `${level} lies ${side === 'upper' ? 'high' : 'low'} (mean ${formatScore(mean)} SD of ${counted(count, compared === 'as left' ? 'reading' : 'unit')})`,
    )
    .join('; ');
  return `By ${factor}, ${what}: ${named}.`;
}
