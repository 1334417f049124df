import type {
  FactorDifference,
  SisterGroup,
  SisterRow,
  SistersResult,
} from '../../lib/analysis/sisters/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatProbability, formatRate, formatRatio, formatScore } from '../../lib/charts/format';
import { counted } from './counted';
import { midSentence, seriesName } from './seriesName';

type Characteristics = FleetResult['characteristics'];

/** Share of false findings that the Sisters page accepts among those it names. */
export const findAt = 0.1;

/** Fewer units leave the spread between units so open that no comparison by it means much. */
export const fewUnits = 3;

/** How far a unit's rate lies from its sisters', for putting the furthest first. */
export function farness({ rate }: SisterRow): number {
  return rate.ratio === null || rate.ratio.median <= 0
    ? Math.abs(rate.difference_mm_per_10kh.median)
    : Math.abs(Math.log(rate.ratio.median));
}

/** Units found unlike their sisters, one row a unit and series, the furthest first. */
export function foundUnlike(groups: readonly SisterGroup[]): readonly SisterRow[] {
  return groups
    .flatMap(({ rows }) => rows)
    .filter(({ q }) => q <= findAt)
    .sort((a, b) => farness(b) - farness(a));
}

/** One finding in words: 'O-3012 wears 2.30 times as fast as its sisters (80 %: 2.05 to 2.57)'. */
export function findingWords(row: SisterRow): string {
  const { ratio, difference_mm_per_10kh: difference } = row.rate;
  if (ratio === null)
    return `${row.unit} wears ${formatRate(difference.median, null)} ${difference.median > 0 ? 'more' : 'less'} than its sisters`;
  return `${row.unit} wears ${formatRatio(ratio.median)} times as fast as its sisters (80\u00a0%: ${formatRatio(ratio.lower80)} to ${formatRatio(ratio.upper80)}; q ${formatProbability(row.q)})`;
}

/** The answer of the Sisters page: who wears unlike the others, in the series shown and in others. */
export function sistersSentence(
  { groups }: SistersResult,
  series: string,
  characteristics: Characteristics,
): string {
  const shown = groups.filter((group) => group.series === series);
  const name = midSentence(seriesName(series, characteristics));
  if (shown.every(({ reason }) => reason !== null))
    return `No unit can be compared in ${name}: ${shown[0]?.reason ?? 'no group has readings of it'}.`;
  const found = foundUnlike(shown);
  const [first, second] = found;
  if (first === undefined) {
    const count = shown.reduce((sum, { rows }) => sum + rows.length, 0);
    return `In ${name} no unit of ${counted(count, 'unit')} can be told from its sisters.`;
  }
  const others = found.length - (second === undefined ? 1 : 2);
  const names = [first, second].flatMap((row) => (row === undefined ? [] : [findingWords(row)])).join('; ');
  const rest = others > 0 ? `; ${counted(others, 'other unit')} differ${others === 1 ? 's' : ''} less` : '';
  return `In ${name}, ${names}${rest}.`;
}

/** Findings of the other series, one a series: what the choice of series leads to. */
export function otherFindings(
  { groups }: SistersResult,
  series: string,
): readonly { readonly series: string; readonly row: SisterRow }[] {
  const first = new Map<string, SisterRow>();
  for (const row of foundUnlike(groups))
    if (row.series !== series && !first.has(row.series)) first.set(row.series, row);
  return [...first].map(([name, row]) => ({ series: name, row }));
}

/** What a comparison of levels found, as a sentence. */
export function differenceSentence({ factor, compared, levels, reason }: FactorDifference): string {
  const what = { 'wear rate': 'wear rate', 'start level': 'start level', 'as left': 'readings as left' }[
    compared
  ];
  if (reason !== null) return `By ${factor}, ${what}: ${reason}.`;
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
