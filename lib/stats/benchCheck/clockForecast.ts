import { group, median } from 'd3-array';

/** Readings at 12, 3, 6 and 9 o'clock, mm. */
export type FourClock = readonly [number, number, number, number];

/** A complete set of clock readings on record. */
export interface KnownSet {
  readonly unit: string;
  /** Name of the run that it was read in. */
  readonly run: string;
  readonly readings_mm: FourClock;
}

/** How the next set is expected to lie about its own mean. */
export interface ClockForecast {
  /** Departure of each position from the mean of the four, mm. */
  readonly departures_mm: FourClock;
  /** Standard deviation of one position about mean and departure, noise of the reading included, mm. */
  readonly sd_mm: number;
  /** What the departures are taken from. */
  readonly from: 'run' | 'unit' | 'group';
}

/** Least standard deviation, mm: about what a feeler or a dial gauge resolves. */
const floor_mm = 0.005;
/** Fewest differences from which a spread is told. */
const fewest = 8;
/** Variance of a reading in that of its departure from the mean of four. */
const perReading = 4 / 3;

const positions = [0, 1, 2, 3] as const;

/**
 * Departures of the four positions expected in the next set of a unit, and their spread.
 *
 * Within a run they are those of the run's sets (their median); in a new run those of the unit's runs; for a unit without sets
 * those of the group. The spread is 1.4826 times the median absolute difference between sets of one run, runs of one unit, or
 * units, so that single slips on record do not widen it; differences have twice the variance, departures from the mean of
 * four three quarters of it. Null under 8 differences of any kind.
 *
 * @param run name of the run that the set is to be read in, or null for a new one
 */
export function clockForecast(
  sets: readonly KnownSet[],
  unit: string,
  run: string | null,
): ClockForecast | null {
  const { known, runs, units } = departures(sets);
  const overall = middle(known.map(({ departures }) => departures));
  const inGroup = spread(
    known.flatMap(({ departures }) => minus(departures, overall)),
    1,
  );
  if (inGroup === null) return null;
  const inUnit = spread(
    units.flatMap((one) => one.inUnit.flat()),
    2,
  );
  const inRun = spread(
    runs.flatMap((one) => one.inRun.flat()),
    2,
  );
  const ownRun = run === null ? undefined : runs.find((one) => one.unit === unit && one.run === run);
  if (ownRun !== undefined && inRun !== null)
    return { departures_mm: ownRun.departures, sd_mm: predicted(inRun, ownRun.sets), from: 'run' };
  const own = units.find((one) => one.unit === unit);
  if (own !== undefined && inUnit !== null)
    return { departures_mm: own.departures, sd_mm: predicted(inUnit, own.runs), from: 'unit' };
  return { departures_mm: overall, sd_mm: inGroup, from: 'group' };
}

/**
 * Standard deviation of one clock reading, mm, from the departures of sets of one run, which only noise changes; null under 8
 * differences.
 */
export function clockNoise(sets: readonly KnownSet[]): number | null {
  return spread(
    departures(sets).runs.flatMap((one) => one.inRun.flat()),
    2,
  );
}

/** Departures of every set, their medians by run and by unit, and the steps from one to the next. */
function departures(sets: readonly KnownSet[]) {
  const known = sets.map((set) => ({ ...set, departures: departuresOf(set.readings_mm) }));
  const runs = [...group(known, (set) => `${set.unit}\u0000${set.run}`).values()].map((own) => ({
    unit: own[0]?.unit ?? '',
    run: own[0]?.run ?? '',
    sets: own.length,
    departures: middle(own.map(({ departures }) => departures)),
    inRun: own.slice(1).map(({ departures }, index) => minus(departures, own[index]?.departures)),
  }));
  const units = [...group(runs, (one) => one.unit).values()].map((own) => ({
    unit: own[0]?.unit ?? '',
    runs: own.length,
    departures: middle(own.map(({ departures }) => departures)),
    inUnit: own.slice(1).map(({ departures }, index) => minus(departures, own[index]?.departures)),
  }));
  return { known, runs, units };
}

function departuresOf(readings: FourClock): FourClock {
  const mean = (readings[0] + readings[1] + readings[2] + readings[3]) / 4;
  return readings.map((reading) => reading - mean) as unknown as FourClock;
}

function minus(one: FourClock, other: FourClock | undefined): readonly number[] {
  return other === undefined ? [] : positions.map((p) => one[p] - other[p]);
}

/** Median of each position. */
function middle(all: readonly FourClock[]): FourClock {
  return positions.map((p) => median(all, (one) => one[p]) ?? 0) as unknown as FourClock;
}

/** Standard deviation of one position from differences that have so many times its variance; null where there are too few. */
function spread(differences: readonly number[], times: number): number | null {
  if (differences.length < fewest) return null;
  const sd = 1.4826 * (median(differences, Math.abs) ?? 0);
  return Math.max(floor_mm, sd * Math.sqrt(perReading / times));
}

/** The mean of so many known sets is itself uncertain. */
function predicted(sd_mm: number, known: number): number {
  return sd_mm * Math.sqrt(1 + 1 / known);
}
