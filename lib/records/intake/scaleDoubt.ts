import type { LengthUnit } from '../lengthUnits';

/** A usual slip of scale: the factor that brings the reading to the size of its like, and how a person would say it. */
export interface ScaleDoubt {
  readonly factor: number;
  readonly words: string;
}

const decimalSlips: readonly ScaleDoubt[] = [
  { factor: 10, words: 'times 10' },
  { factor: 100, words: 'times 100' },
  { factor: 1000, words: 'times 1000' },
  { factor: 1 / 10, words: 'a tenth' },
  { factor: 1 / 100, words: 'a hundredth' },
  { factor: 1 / 1000, words: 'a thousandth' },
];
/** Units taken for one another, by the unit that the reading is stated in. */
const unitSlips: Readonly<Partial<Record<LengthUnit, readonly ScaleDoubt[]>>> = {
  mm: [
    { factor: 25.4, words: 'times 25.4 (inches for millimetres)' },
    { factor: 25.4 / 1000, words: 'divided by 39.4 (thou for millimetres)' },
  ],
  mil: [{ factor: 1000 / 25.4, words: 'times 39.4 (millimetres for thou)' }],
  in: [{ factor: 1 / 25.4, words: 'divided by 25.4 (millimetres for inches)' }],
};

/** How far a reading may lie from the usual size of its like, as a factor, before it is doubted; runout spreads most. */
const widest: Readonly<Record<string, number>> = {
  thrust_play: 3.9,
  tip_compressor: 3.9,
  tip_turbine: 3.9,
  runout: 9,
};
const widestOfOthers = 9;
/** A slip is only named if it brings the reading within this factor of the usual size. */
const closeEnough = 2.5;

/** The usual slips of scale of a reading stated in that unit of measure. */
export function slipsOf(stated: LengthUnit): readonly ScaleDoubt[] {
  return [...decimalSlips, ...(unitSlips[stated] ?? [])];
}

/**
 * The slip of scale that a reading looks like against the usual size of its characteristic, or null.
 *
 * A doubt needs a reading further from the median than its characteristic spreads, and a usual factor (10, 25.4, 100,
 * 1000 or one divided by it, thou, inches and mm exchanged) that brings it within 2.5 times of it; the closest is named.
 *
 * @param value_mm reading, mm, above 0
 * @param usual_mm usual size of the readings of the same characteristic, mm, above 0
 * @param stated unit of measure that the reading is stated in: only a unit taken for that one is looked for
 */
export function scaleDoubt(
  characteristic: string,
  value_mm: number,
  usual_mm: number,
  stated: LengthUnit,
): ScaleDoubt | null {
  const away = Math.abs(Math.log(value_mm / usual_mm));
  if (!(away > Math.log(widest[characteristic] ?? widestOfOthers))) return null;
  const distance = ({ factor }: ScaleDoubt) => Math.abs(Math.log((value_mm * factor) / usual_mm));
  const best = slipsOf(stated).reduce((one, other) => (distance(other) < distance(one) ? other : one));
  return distance(best) <= Math.log(closeEnough) ? best : null;
}

/** Fewest readings from which a usual size can be told. */
const fewestReadings = 4;

/**
 * Usual size of a characteristic: the median of the readings in the window of a factor 2.5 that holds the most of them, so
 * that slips of scale, however many of one kind, do not shift it; null below 4 readings.
 *
 * @param sizes sizes above 0 in mm with the number of readings of each, rising
 */
export function usualSize(
  sizes: readonly { readonly value_mm: number; readonly readings: number }[],
): number | null {
  if (sizes.reduce((sum, { readings }) => sum + readings, 0) < fewestReadings) return null;
  let [start, inside] = [0, 0];
  let best = { from: 0, to: 0, readings: 0 };
  sizes.forEach(({ value_mm, readings }, end) => {
    inside += readings;
    for (; (sizes[start]?.value_mm as number) * closeEnough < value_mm; start++)
      inside -= sizes[start]?.readings as number;
    if (inside > best.readings) best = { from: start, to: end, readings: inside };
  });
  let before = 0;
  for (const { value_mm, readings } of sizes.slice(best.from, best.to + 1)) {
    before += readings;
    if (before >= best.readings / 2) return value_mm;
  }
  return null;
}
