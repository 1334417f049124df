import type { SisterGroup, SisterRow, StartRow } from '../../lib/analysis/sisters/types';
import { formatMm, formatProbability, formatRate, formatRatio } from '../../lib/charts/format';
import type { FunnelMeasure } from '../../lib/charts/funnelPicture';

/** Share of false findings that the Sisters page accepts among those it names. */
export const findAt = 0.1;

/** One unit found unlike its sisters, in words. */
export interface SisterFinding {
  readonly unit: string;
  readonly series: string;
  readonly words: string;
}

/** How far a unit's rate lies from its sisters', for putting the furthest first. */
function farness({ rate }: SisterRow): number {
  return rate.ratio === null || rate.ratio.median <= 0
    ? Math.abs(rate.difference_mm_per_10kh.median)
    : Math.abs(Math.log(rate.ratio.median));
}

/** One finding of wear: 'O-3012 wears 2.30 times as fast as its sisters (80 %: 2.05 to 2.57; q <0.001)'. */
function rateWords({ unit, rate: { ratio, difference_mm_per_10kh: difference }, q }: SisterRow): string {
  const chance = `q\u00a0${formatProbability(q)}`;
  if (ratio !== null)
    return `${unit} wears ${formatRatio(ratio.median)} times as fast as its sisters (80\u00a0%: ${formatRatio(ratio.lower80)} to ${formatRatio(ratio.upper80)}; ${chance})`;
  const [from, to] = [difference.lower80, difference.upper80].map((end) => formatRate(end, null));
  const side = difference.median > 0 ? 'more' : 'less';
  return `${unit} wears ${formatRate(Math.abs(difference.median), null)} ${side} than its sisters (80\u00a0% of the difference: ${from} to ${to}; ${chance})`;
}

/** One finding of a start level: 'H-2003 starts 0.130 mm above its sisters (q 0.060)'. */
function startWords({ unit, difference_mm, sd_mm, q }: StartRow): string {
  const side = difference_mm > 0 ? 'above' : 'below';
  return `${unit} starts ${formatMm(Math.abs(difference_mm), sd_mm)} ${side} its sisters (q\u00a0${formatProbability(q)})`;
}

/** Findings by the groups that were gone through: a page asks several times, and a fleet may have a hundred thousand rows. */
const known = new WeakMap<readonly SisterGroup[], Map<FunnelMeasure, readonly SisterFinding[]>>();

/** Units found unlike their sisters, one for each unit and series, the furthest first. */
export function findings(groups: readonly SisterGroup[], measure: FunnelMeasure): readonly SisterFinding[] {
  const ofGroups = known.get(groups) ?? new Map<FunnelMeasure, readonly SisterFinding[]>();
  known.set(groups, ofGroups);
  const found =
    ofGroups.get(measure) ??
    (measure === 'start'
      ? leastFirst(
          groups,
          ({ startRows }) => startRows,
          ({ tailProbability }) => tailProbability,
          startWords,
        )
      : leastFirst(
          groups,
          ({ rows }) => rows,
          (row) => -farness(row),
          rateWords,
        ));
  ofGroups.set(measure, found);
  return found;
}

/** Findings among rows, those of the least number first; words are made for the few that are read. */
function leastFirst<Row extends SisterRow | StartRow>(
  groups: readonly SisterGroup[],
  rowsOf: (group: SisterGroup) => readonly Row[],
  numberOf: (row: Row) => number,
  wordsOf: (row: Row) => string,
): readonly SisterFinding[] {
  const found: { readonly row: Row; readonly number: number }[] = [];
  for (const group of groups)
    for (const row of rowsOf(group)) if (row.q <= findAt) found.push({ row, number: numberOf(row) });
  return found
    .sort((a, b) => a.number - b.number)
    .map(({ row }) => ({
      unit: row.unit,
      series: row.series,
      // Written when it is read, in the style of then.
      get words() {
        return wordsOf(row);
      },
    }));
}
