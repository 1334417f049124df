import type { CircleSet, ClearanceCircles } from '../../lib/analysis/circle/types';
import { formatLevel, formatMm } from '../../lib/charts/format';

/** A clock direction such as '4:30 o’clock', to the half hour; null if there is none. */
export function directionWords(clock: number | null): string | null {
  if (clock === null) return null;
  const halves = Math.round(clock * 2) / 2;
  const hour = Math.floor(halves) === 0 ? 12 : Math.floor(halves);
  return `${hour}${halves % 1 === 0 ? '' : ':30'} o’clock`;
}

/** Offset with its direction: '0.085 ± 0.011 mm towards 6 o’clock'. */
export function offsetWords({ positions, uncertainty }: CircleSet): string | null {
  if (positions === null) return null;
  const direction = directionWords(positions.offsetDirection_clock);
  const size = formatLevel(positions.offset_mm, uncertainty?.offset_mm ?? null);
  return direction === null ? size : `${size}, gap least towards ${direction}`;
}

/** What a set says of the whole circle, and what changed since it was left. */
export function circleSentence(
  { largest_mm, smallest_mm }: ClearanceCircles,
  before: CircleSet | null,
  now: CircleSet,
): string {
  const { positions, uncertainty, stage } = now;
  const named = stage === 'found' ? 'As found' : 'As left';
  if (positions === null)
    return `${named} on ${now.date} fewer than three positions were read, so nothing follows for the circle.`;
  const smallest = `the smallest gap round the circle is ${formatLevel(positions.smallestGap_mm, uncertainty?.smallestGap_mm ?? null)}${towards(positions.smallestGapDirection_clock)}`;
  const assumed = positions.ovalityAssumedZero
    ? ' Three positions were read: the fourth follows with an ovality of zero.'
    : '';
  const change =
    before?.positions == null
      ? ''
      : ` Since it was left on ${before.date} the mean has changed by ${formatMm(positions.mean_mm - before.positions.mean_mm)} and the offset by ${formatMm(Math.hypot(positions.horizontal_mm - before.positions.horizontal_mm, positions.vertical_mm - before.positions.vertical_mm))}.`;
  const low =
    smallest_mm !== null && positions.smallestGap_mm < smallest_mm ? ' That is below its limit.' : '';
  const read = Object.values(now.readings).flatMap((value) => value ?? []);
  const high =
    largest_mm !== null && Math.max(...read) > largest_mm ? ' The largest gap read is above its limit.' : '';
  return `${named} on ${now.date} ${smallest}.${low}${high}${change}${assumed}`;
}

function towards(clock: number | null): string {
  const direction = directionWords(clock);
  return direction === null ? '' : ` at ${direction}`;
}
