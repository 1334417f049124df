/** What says something of itself; axes have names of their own, which nobody asked for. */
const speaking = 'svg .role-mark [aria-label]';

/** How many points of a picture say something of themselves. */
export function countPoints(box: Element): number {
  return box.querySelectorAll(speaking).length;
}

/**
 * The points of a picture in the order in which they are gone through: rows and cells as they are drawn, all else from left to
 * right, whatever layer it is drawn in.
 */
export function pointsOf(box: Element): readonly Element[] {
  const points = [...box.querySelectorAll(speaking)];
  if (points.every((point) => point.closest('.mark-rect') !== null)) return points;
  const placed = points.map((point) => ({ point, box: point.getBoundingClientRect() }));
  const middle = ({ left, width }: DOMRect) => Math.round(left + width / 2);
  return placed
    .sort((a, b) => middle(a.box) - middle(b.box) || a.box.top - b.box.top)
    .map(({ point }) => point);
}

const largeStep = 10;

/** The place that a key leads to from another, both from 0; null for a key that leads nowhere. */
export function placeByKey(key: string, place: number, count: number): number | null {
  const last = count - 1;
  const to: Readonly<Record<string, number>> = {
    ArrowRight: place + 1,
    ArrowDown: place + 1,
    ArrowLeft: place - 1,
    ArrowUp: place - 1,
    PageDown: place + largeStep,
    PageUp: place - largeStep,
    Home: 0,
    End: last,
  };
  const wanted = to[key];
  return wanted === undefined ? null : Math.max(0, Math.min(last, wanted));
}
