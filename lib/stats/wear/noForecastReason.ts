import { hoursText } from '../sentenceNumbers';
import { exactLines } from './exactLines';
import type { WearStatistics } from './types';

/** Least units with two readings in one run, and least readings, from which a wear rate is forecast. */
const LEAST_UNITS = 2;
const LEAST_READINGS = 7;
/** Beyond this, squares and their products leave the range of numbers. */
const LARGEST = 1e60;

/**
 * Why a group's series cannot be forecast from, in words with counts, or null where it can.
 *
 * It cannot with under 2 units with 2 readings in a run; with under 7 readings, where N - 4 degrees of freedom
 * leave no finite variance; with all readings at one number of run hours; with single readings at the same two
 * run hours everywhere, where noise and spread look alike; or where lines pass through all readings without
 * scatter. Where it returns null, fitWear and integrateWear give finite numbers.
 */
export function noForecastReason(statistics: WearStatistics): string | null {
  const { readings } = statistics;
  const units = unitsWithTwoReadings(statistics);
  if (units < LEAST_UNITS) {
    return `the wear rate needs at least ${LEAST_UNITS} units with 2 readings in a run, the group has ${units}`;
  }
  if (readings < LEAST_READINGS) {
    return `the wear rate needs at least ${LEAST_READINGS} readings, the group has ${readings}`;
  }
  const isSmall = (value: number) => Math.abs(value) < LARGEST;
  if (!isSmall(statistics.yCentre) || !statistics.sxx.every(isSmall) || !statistics.syy.every(isSmall)) {
    return `some of the ${readings} readings or their run hours are too large to be true: check them and their units`;
  }
  return sameHoursReason(statistics) ?? noScatterReason(statistics);
}

function unitsWithTwoReadings({ unitNames, firstRun, count }: WearStatistics): number {
  return unitNames.filter((_, unit) => count.subarray(firstRun[unit], firstRun[unit + 1]).some((c) => c >= 2))
    .length;
}

function sameHoursReason({ count, minX, maxX, readings }: WearStatistics): string | null {
  const low = minX.reduce((least, x) => Math.min(least, x));
  const high = maxX.reduce((most, x) => Math.max(most, x));
  const near = 1e-9 * Math.max(Math.abs(low), Math.abs(high));
  if (high - low <= near) {
    return `the wear rate needs readings at 2 or more run hours, all ${readings} readings of the group are at ${hoursText(10_000 * low)}`;
  }
  const isOneOfTwo = (x: number) => x - low <= near || high - x <= near;
  const onceEach = count.every((readingsInRun, run) => {
    const [from, to] = [minX[run] as number, maxX[run] as number];
    return (
      isOneOfTwo(from) && isOneOfTwo(to) && (readingsInRun === 1 || (readingsInRun === 2 && to - from > near))
    );
  });
  if (!onceEach) return null;
  return (
    `the ${count.length} runs of the group have single readings at the same two run hours, ${hoursText(10_000 * low)} and ${hoursText(10_000 * high)}, ` +
    'so that gauge noise and differences between units cannot be told apart: one repeated reading of the same ' +
    'state, or one reading at other run hours, would settle it'
  );
}

function noScatterReason(statistics: WearStatistics): string | null {
  const exact = exactLines(statistics);
  if (exact === null) return null;
  const { readings, runNames, unitNames, syy } = statistics;
  const counts = `all ${readings} readings of the group`;
  const ending =
    'so that the gauge noise cannot be estimated: record the readings as measured, with one more digit';
  if (syy.every((squares) => squares <= readings * (4 * Number.EPSILON * statistics.yCentre) ** 2)) {
    return `${counts} are equal, ${ending}`;
  }
  if (exact.start === 'group' && exact.rate === 'group')
    return `${counts} lie on one straight line, ${ending}`;
  const lines =
    exact.start === 'run' || exact.rate === 'run'
      ? `the straight lines of their ${runNames.length} runs`
      : `the straight lines of their ${unitNames.length} units`;
  return `${counts} lie exactly on ${lines}, ${ending}`;
}
