import type { IntervalPoint } from '../../lib/analysis/demand/intervalCurve';
import { formatChance, formatFixed, formatHours } from '../../lib/charts/format';
import type { IntervalMeasure } from '../../lib/charts/intervalPicture';
import { moneyWords } from './sparesSentence';

function pointWords(
  { interval_h, chance, overhaulsAYear, costAYear }: IntervalPoint,
  currency: string | null,
) {
  const cost = moneyWords(costAYear, currency);
  return `${formatChance(chance)} and ${formatFixed(overhaulsAYear, 1)} overhauls a year at ${formatHours(interval_h)}${cost === null ? '' : `, ${cost} a year`}`;
}

/** The planned interval of a group and the ends of its curve, of its points in order. */
function tellingPoints(own: readonly IntervalPoint[]) {
  const planned = own.find((point) => point.planned) ?? null;
  const ends = [...new Set([own.at(0), own.at(-1)])].filter(
    (point): point is IntervalPoint => point !== undefined && point !== planned,
  );
  return { planned, ends };
}

function cheapest(points: readonly IntervalPoint[]): IntervalPoint | null {
  return points.reduce<IntervalPoint | null>((least, point) => {
    if (point.costAYear === null) return least;
    return least?.costAYear == null || point.costAYear < least.costAYear ? point : least;
  }, null);
}

/** One sentence a group: the planned interval, the ends of the curve, and the cheapest measured interval where costs are given. */
export function intervalSentences(
  points: readonly IntervalPoint[],
  currency: string | null,
): readonly string[] {
  return [...new Set(points.map(({ group }) => group))].map((group) => {
    const own = points.filter((point) => point.group === group);
    const { planned, ends } = tellingPoints(own);
    const said = [
      planned === null ? 'no interval is planned' : `as planned ${pointWords(planned, currency)}`,
      ...ends.map((point) => pointWords(point, currency)),
    ];
    const within = cheapest(own.filter(({ extrapolated }) => !extrapolated));
    if (within !== null)
      said.push(
        `least cost of the intervals within what was measured at ${formatHours(within.interval_h)}${cheapest(own) === within ? '' : ', lower beyond it, where no run on record supports the curve'}`,
      );
    return `${group}: ${said.join('; ')}.`;
  });
}

/** What the curves of one measure show: a sentence a group, of the planned interval and the ends of the curve. */
export function intervalFinding(
  points: readonly IntervalPoint[],
  measure: IntervalMeasure,
  currency: string | null,
): string {
  const valueWords = (point: IntervalPoint) =>
    measure === 'chance'
      ? formatChance(point.chance)
      : measure === 'overhaulsAYear'
        ? `${formatFixed(point.overhaulsAYear, 1)} a year`
        : (moneyWords(point.costAYear, currency) ?? 'no cost');
  const at = (point: IntervalPoint) => `${valueWords(point)} at ${formatHours(point.interval_h)}`;
  const sentences = [...new Set(points.map(({ group }) => group))].map((group) => {
    const { planned, ends } = tellingPoints(points.filter((point) => point.group === group));
    return `${group}: ${[...(planned === null ? [] : [`as planned ${at(planned)}`]), ...ends.map(at)].join('; ')}.`;
  });
  return sentences.join(' ');
}

/** What keeps the cost from being told; null if nothing does. */
export function costGap(
  points: readonly IntervalPoint[],
  given: readonly boolean[],
  currency: string | null,
): string | null {
  if (!given.some(Boolean)) return null;
  if (!given.every(Boolean)) return 'Cost a year follows once both costs and the currency are given.';
  const unpriced = [
    ...new Set(points.filter(({ costAYear }) => costAYear === null).map(({ group }) => group)),
  ];
  return unpriced.length === 0
    ? null
    : `No cost of ${unpriced.join(', ')}: a part that is fitted there has no price in ${currency}.`;
}
