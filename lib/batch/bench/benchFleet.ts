import { readingsPerOverhaul } from './groupTruth';
import { type MadeOverhaul, madeUnit, overhaulsPerUnit } from './madeUnit';

/**
 * Overhauls of one made sister group with as many readings as wanted, one after another, the same every time; the last
 * overhaul has what is left of them.
 */
export function* benchFleet(readings: number): Generator<MadeOverhaul> {
  let left = readings;
  for (let unit = 0; left > 0; unit++) {
    for (const overhaul of madeUnit(unit, 0)) {
      if (left > 0)
        yield left >= readingsPerOverhaul
          ? overhaul
          : { ...overhaul, readings: overhaul.readings.slice(0, left) };
      left -= readingsPerOverhaul;
    }
  }
}

/** Readings of a fleet of so many units. */
export function readingsOf(units: number): number {
  return units * overhaulsPerUnit * readingsPerOverhaul;
}
