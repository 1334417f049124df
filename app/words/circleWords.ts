import type { CircleSet, ClearanceCircles } from '../../lib/analysis/circle/types';
import { formatDate, formatLevel, formatMm } from '../../lib/charts/format';

/** A clock direction such as '4:30 o’clock', to the half hour; null if there is none. */
export function directionWords(clock: number | null): string | null {
  if (clock === null) return null;
  const halves = Math.round(clock * 2) / 2;
  const hour = Math.floor(halves) === 0 ? 12 : Math.floor(halves);
  return `${hour}${halves % 1 === 0 ? '' : ':30'} o’clock`;
}

/** Offset with its direction: '0.085 ± 0.011 mm, gap least towards 6 o’clock'. */
export function offsetWords({ positions, uncertainty }: CircleSet): string | null {
  if (positions === null) return null;
  const direction = directionWords(positions.offsetDirection_clock);
  const size = formatLevel(positions.offset_mm, uncertainty?.offset_mm ?? null);
  return direction === null ? size : `${size}, gap least towards ${direction}`;
}

/** What a set says of the whole circle, and what changed since it was left. */
export function circleSentence(circles: ClearanceCircles, before: CircleSet | null, now: CircleSet): string {
  const { positions, uncertainty, largestGap_mm, stage } = now;
  const named = stage === 'found' ? 'As found' : 'As left';
  if (positions === null)
    return `${named} on ${formatDate(now.date)} fewer than three positions were read, so nothing follows for the circle.`;
  const { smallestGap_mm } = positions;
  const smallestSd_mm = uncertainty?.smallestGap_mm ?? null;
  const smallest = `the smallest gap round the circle is ${formatLevel(smallestGap_mm, smallestSd_mm)}${towards(positions.smallestGapDirection_clock)}`;
  const low = verdict('It', smallestGap_mm, smallestSd_mm, circles.smallest_mm, 'below');
  const high =
    largestGap_mm === null
      ? ''
      : verdict(
          `The largest, ${formatMm(largestGap_mm)},`,
          largestGap_mm,
          circles.noise_mm,
          circles.largest_mm,
          'above',
        );
  const assumed = positions.ovalityAssumedZero
    ? ' Three positions were read: the fourth follows with an ovality of zero.'
    : '';
  const was = before?.positions ?? null;
  const change =
    before === null || was === null
      ? ''
      : ` Since it was left on ${formatDate(before.date)} the mean has changed by ${formatMm(positions.mean_mm - was.mean_mm)} and the offset by ${formatMm(Math.hypot(positions.horizontal_mm - was.horizontal_mm, positions.vertical_mm - was.vertical_mm))}.`;
  return `${named} on ${formatDate(now.date)} ${smallest}.${low}${high}${change}${assumed}`;
}

/** Where a gap lies by its limit; within two standard deviations of it, it cannot be told from it. Empty well within. */
function verdict(
  what: string,
  gap_mm: number,
  sd_mm: number | null,
  limit_mm: number | null,
  past: 'below' | 'above',
): string {
  if (limit_mm === null) return '';
  const beyond_mm = past === 'above' ? gap_mm - limit_mm : limit_mm - gap_mm;
  const doubt_mm = 2 * (sd_mm ?? 0);
  if (beyond_mm > doubt_mm) return ` ${what} is ${past} its limit of ${formatMm(limit_mm)}.`;
  return beyond_mm > -doubt_mm ? ` ${what} cannot be told from its limit of ${formatMm(limit_mm)}.` : '';
}

function towards(clock: number | null): string {
  const direction = directionWords(clock);
  return direction === null ? '' : ` at ${direction}`;
}
