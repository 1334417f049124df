import { type ClockPositions, type ClockReadings, clockPositions } from './clockPositions';

/** Standard deviations of what clockPositions gives, from the noise of one reading; directions in clock hours. */
export interface ClockUncertainty {
  readonly mean_mm: number;
  readonly horizontal_mm: number;
  readonly vertical_mm: number;
  /** Null without an offset: its size then has no slope. */
  readonly offset_mm: number | null;
  /** Null without an offset, or where it is over 3 hours: the direction is then not known. */
  readonly offsetDirection_clock: number | null;
  /** Null where no ovality could be seen, with three readings. */
  readonly ovality_mm: number | null;
  /** Null where the smallest gap lies at more than one direction. */
  readonly smallestGap_mm: number | null;
  readonly smallestGapDirection_clock: number | null;
}

type Position = keyof ClockReadings;
type Row = Readonly<Record<Position, number>>;

const POSITIONS: readonly Position[] = ['c12', 'c3', 'c6', 'c9'];
const HOURS = 6 / Math.PI;
/** A direction less certain than a quarter turn is none. */
const MOST_HOURS = 3;

/**
 * Standard deviations of mean, offset, ovality and smallest gap from the noise s of one reading, by the delta
 * method (exact for all but sizes, directions and the smallest gap).
 *
 * Every result is a sum of readings, or its slope is: SD = s x root of the summed squares. With four readings s / 2
 * for mean and ovality, s / sqrt 2 for either offset; the smallest gap s sqrt(3 / 4 + cos squared 2p / 4) at its own
 * angle p, whose change adds nothing to first order. A reading missing shares its part among the others, by
 * c12 + c6 = c3 + c9. Measured by simulation: within 6 % for the smallest gap where the offset is over 3 s; nearer
 * to concentric the smallest gap is found too small on average and its SD here is up to a quarter too large.
 * Null where clockPositions is. Throws unless s is positive.
 */
export function clockUncertainty(readings: ClockReadings, sdNoise_mm: number): ClockUncertainty | null {
  if (!(sdNoise_mm > 0) || !Number.isFinite(sdNoise_mm)) {
    throw new Error(`clockUncertainty requires a positive noise, got ${sdNoise_mm}`);
  }
  const positions = clockPositions(readings);
  if (positions === null) return null;
  const missing = POSITIONS.find((position) => readings[position] === null) ?? null;
  const sdOf = (row: Row) => sdNoise_mm * rootOfSquares(shared(row, missing));
  const { vertical_mm: v, horizontal_mm: h, offset_mm: size } = positions;
  const turned =
    size > 0
      ? (HOURS *
          sdOf(
            combine([
              [-h / size, VERTICAL],
              [v / size, HORIZONTAL],
            ]),
          )) /
        size
      : null;
  return {
    mean_mm: sdOf(MEAN),
    horizontal_mm: sdOf(HORIZONTAL),
    vertical_mm: sdOf(VERTICAL),
    offset_mm:
      size > 0
        ? sdOf(
            combine([
              [v / size, VERTICAL],
              [h / size, HORIZONTAL],
            ]),
          )
        : null,
    offsetDirection_clock: knownHours(turned),
    ovality_mm: missing === null ? sdOf(OVALITY) : null,
    ...smallestGap(positions, sdOf),
  };
}

const MEAN: Row = { c12: 1 / 4, c3: 1 / 4, c6: 1 / 4, c9: 1 / 4 };
const HORIZONTAL: Row = { c12: 0, c3: 1 / 2, c6: 0, c9: -1 / 2 };
const VERTICAL: Row = { c12: 1 / 2, c3: 0, c6: -1 / 2, c9: 0 };
const OVALITY: Row = { c12: 1 / 4, c3: -1 / 4, c6: 1 / 4, c9: -1 / 4 };

/** Slope of the gap at its smallest, and of the angle there: minus the slope of c'(p) over c''(p). */
function smallestGap(
  { vertical_mm: v, horizontal_mm: h, ovality_mm: o, smallestGapDirection_clock: hours }: ClockPositions,
  sdOf: (row: Row) => number,
): Pick<ClockUncertainty, 'smallestGap_mm' | 'smallestGapDirection_clock'> {
  if (hours === null) return { smallestGap_mm: null, smallestGapDirection_clock: null };
  const p = hours / HOURS;
  const [up, across] = [Math.cos(p), Math.sin(p)];
  const gap = combine([
    [1, MEAN],
    [up, VERTICAL],
    [across, HORIZONTAL],
    [Math.cos(2 * p), OVALITY],
  ]);
  const slope = combine([
    [-across, VERTICAL],
    [up, HORIZONTAL],
    [-2 * Math.sin(2 * p), OVALITY],
  ]);
  const bend = -v * up - h * across - 4 * o * Math.cos(2 * p);
  const turned = bend > 0 ? (HOURS * sdOf(slope)) / bend : null;
  return { smallestGap_mm: sdOf(gap), smallestGapDirection_clock: knownHours(turned) };
}

function combine(parts: readonly (readonly [number, Row])[]): Row {
  const at = (position: Position) => parts.reduce((sum, [share, row]) => sum + share * row[position], 0);
  return { c12: at('c12'), c3: at('c3'), c6: at('c6'), c9: at('c9') };
}

/** The row with a missing reading's part put on the others: its neighbours' sum less the one opposite. */
function shared(row: Row, missing: Position | null): Row {
  if (missing === null) return row;
  const part = row[missing];
  const index = POSITIONS.indexOf(missing);
  const moved = POSITIONS.map((position, k): [Position, number] => {
    if (k === index) return [position, 0];
    return [position, row[position] + ((k - index) % 2 === 0 ? -part : part)];
  });
  return { ...row, ...Object.fromEntries(moved) };
}

function rootOfSquares(row: Row): number {
  return Math.hypot(...POSITIONS.map((position) => row[position]));
}

function knownHours(sd: number | null): number | null {
  return sd !== null && sd <= MOST_HOURS ? sd : null;
}
