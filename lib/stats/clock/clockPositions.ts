/** Readings at the four clock positions, mm; null where there is none. */
export interface ClockReadings {
  readonly c12: number | null;
  readonly c3: number | null;
  readonly c6: number | null;
  readonly c9: number | null;
}

/** Mean, offset and ovality of a gap read at clock positions. Directions are clock hours, over 0 up to 12. */
export interface ClockPositions {
  readonly mean_mm: number;
  /** (c3 - c9) / 2. */
  readonly horizontal_mm: number;
  /** (c12 - c6) / 2. */
  readonly vertical_mm: number;
  /** Size of the offset, sqrt(horizontal squared + vertical squared). */
  readonly offset_mm: number;
  /** Direction in which the offset makes the gap smallest, without the ovality; null without an offset. */
  readonly offsetDirection_clock: number | null;
  readonly ovality_mm: number;
  /** Three positions only: mean and offset follow from them with no ovality. */
  readonly ovalityAssumedZero: boolean;
  /** Smallest gap at any angle round the circle, not only at the four positions. */
  readonly smallestGap_mm: number;
  /** Where it lies; null where it lies at more than one direction. */
  readonly smallestGapDirection_clock: number | null;
}

const QUARTER = Math.PI / 2;
/** Halvings of a quarter circle down to one unit in the last place. */
const HALVINGS = 60;

/**
 * Mean m, offset (horizontal h, vertical v) and ovality o of four clock readings, and the smallest gap.
 *
 * m = (c12 + c3 + c6 + c9) / 4, h = (c3 - c9) / 2, v = (c12 - c6) / 2, o = (c12 + c6 - c3 - c9) / 4: the gap at
 * angle p clockwise from 12 is m + v cos p + h sin p + o cos 2p. Ovality at 45 degrees to the positions cannot
 * be seen from four. A fourth position that is missing is taken as the one without ovality: c12 + c6 = c3 + c9.
 * Null under three positions, or where a result leaves the range of numbers.
 */
export function clockPositions(readings: ClockReadings): ClockPositions | null {
  const complete = completeReadings(readings);
  if (complete === null) return null;
  const { c12, c3, c6, c9 } = complete;
  const ovalityAssumedZero = Object.values(readings).some((reading) => reading === null);
  const horizontal_mm = c3 / 2 - c9 / 2;
  const vertical_mm = c12 / 2 - c6 / 2;
  const ovality_mm = ovalityAssumedZero ? 0 : c12 / 4 + c6 / 4 - c3 / 4 - c9 / 4;
  const mean_mm = c12 / 4 + c3 / 4 + c6 / 4 + c9 / 4;
  const angle = angleOfSmallest(vertical_mm, horizontal_mm, ovality_mm);
  const [up, across] = [Math.cos(angle), Math.sin(angle)];
  const gap =
    mean_mm -
    Math.abs(vertical_mm) * up -
    Math.abs(horizontal_mm) * across +
    ovality_mm * Math.cos(2 * angle);
  const result = {
    mean_mm,
    horizontal_mm,
    vertical_mm,
    offset_mm: Math.hypot(horizontal_mm, vertical_mm),
    offsetDirection_clock: clockHours(-vertical_mm, -horizontal_mm),
    ovality_mm,
    ovalityAssumedZero,
    // Rounding must not put the smallest gap above a gap that was read.
    smallestGap_mm: Math.min(gap, c12, c3, c6, c9),
    smallestGapDirection_clock: directionOfSmallest(vertical_mm, horizontal_mm, angle),
  };
  const inRange = [result.mean_mm, result.offset_mm, result.ovality_mm, result.smallestGap_mm].every(
    Number.isFinite,
  );
  return inRange ? result : null;
}

function completeReadings({ c12, c3, c6, c9 }: ClockReadings) {
  if (c12 === null)
    return c3 === null || c6 === null || c9 === null ? null : { c12: c3 + c9 - c6, c3, c6, c9 };
  if (c6 === null) return c3 === null || c9 === null ? null : { c12, c3, c6: c3 + c9 - c12, c9 };
  if (c3 === null) return c9 === null ? null : { c12, c3: c12 + c6 - c9, c6, c9 };
  return { c12, c3, c6, c9: c9 ?? c12 + c6 - c3 };
}

/**
 * Angle from the vertical, within a quarter circle, at which -|v| cos t - |h| sin t + o cos 2t is smallest.
 *
 * The smallest gap lies in the quarter opposite to the offset, because o cos 2p is the same in all four. There
 * the gap is a convex function of sin squared t, so that its derivative changes sign once and halving finds it.
 */
function angleOfSmallest(vertical: number, horizontal: number, ovality: number): number {
  const [v, h] = [Math.abs(vertical), Math.abs(horizontal)];
  let [low, high] = [0, QUARTER];
  for (let k = 0; k < HALVINGS; k++) {
    const t = (low + high) / 2;
    if (v * Math.sin(t) - h * Math.cos(t) - 2 * ovality * Math.sin(2 * t) < 0) low = t;
    else high = t;
  }
  return (low + high) / 2;
}

/** Clock direction of the smallest gap, or null where its mirror image is as small. */
function directionOfSmallest(vertical: number, horizontal: number, angle: number): number | null {
  const [up, across] = [angle < QUARTER - 1e-12 ? Math.cos(angle) : 0, angle > 1e-12 ? Math.sin(angle) : 0];
  if ((vertical === 0 && up > 0) || (horizontal === 0 && across > 0)) return null;
  return clockHours(-Math.sign(vertical) * up, -Math.sign(horizontal) * across);
}

/** Clock hours, over 0 up to 12, of a direction with the given parts upwards and to the right. */
function clockHours(up: number, right: number): number | null {
  if (up === 0 && right === 0) return null;
  const hours = (Math.atan2(right, up) * 6) / Math.PI;
  return hours > 0 ? hours : hours + 12;
}
