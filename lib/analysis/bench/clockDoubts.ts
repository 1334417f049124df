import { clockSetDoubt } from '../../stats/benchCheck/clockSetDoubt';
import { readingScore } from '../../stats/residuals/readingScore';
import { boxName, type Clock, type Stage } from './benchEntry';
import { clocks } from './boxes';
import type { DoubtsOfBoxes, TypedReadings } from './checkReadings';
import { questionedScore } from './readingDoubts';
import { digitsExchanged, scaleSuggestion } from './suggestions';
import { middle_mm, type Reading } from './typedReading';
import type { CheckBasis, Doubt } from './types';

/** Fewest positions whose mean is held against its forecast. */
const fewestOfMean = 3;

/** What is to be asked about a set of clock readings as a whole: positions that do not fit the others, and its mean. */
export function clockDoubts(
  basis: CheckBasis,
  stage: Stage,
  typed: TypedReadings,
  single: DoubtsOfBoxes,
): DoubtsOfBoxes {
  const { clock: forecast } = basis.forecasts[stage];
  if (basis.shape === 'single' || forecast === null) return new Map();
  const box = (clock: Clock) => boxName(basis.characteristic, stage, clock);
  const readings = clocks.map((clock): Reading | null => {
    const entry = typed.get(box(clock));
    return entry?.kind === 'read' && entry.reading.upper_mm !== null ? entry.reading : null;
  });
  const values = readings.map((reading) => (reading === null ? null : middle_mm(reading)));
  const doubt = clockSetDoubt(values, forecast);
  if (doubt?.kind === 'exchanged') {
    const named = doubt.positions.map((position) => clocks[position] as Clock) as [Clock, Clock];
    return new Map(
      named.map((clock) => [box(clock), [{ kind: 'clock positions exchanged', clocks: named }]]),
    );
  }
  if (doubt?.kind === 'position') {
    const at = box(clocks[doubt.position] as Clock);
    // What is known of the reading by itself says more: a slip of scale, or the digits that would fit.
    if (single.has(at)) return new Map();
    const { expected_mm, sd_mm } = doubt;
    const found = positionDoubt(readings[doubt.position] as Reading, expected_mm, sd_mm);
    return new Map([[at, [found]]]);
  }
  return setDoubt(basis, stage, values, box, single);
}

function positionDoubt(reading: Reading, expected_mm: number, sd_mm: number): Doubt {
  const misfit = (value_mm: number) => Math.abs(value_mm - expected_mm) / (questionedScore * sd_mm);
  const scale = scaleSuggestion(reading, (factor) => misfit(middle_mm(reading) * factor));
  if (scale !== null) return { kind: 'scale', ...scale };
  const perUnit = reading.lower === 0 ? 1 : reading.lower_mm / reading.lower;
  const suggestion = digitsExchanged(reading.text, (value) => misfit(value * perUnit));
  return { kind: 'clock position', expected_mm, suggestion };
}

/** The mean of a set in which nothing else is questioned, against its forecast. */
function setDoubt(
  { forecasts }: CheckBasis,
  stage: Stage,
  values: readonly (number | null)[],
  box: (clock: Clock) => string,
  single: DoubtsOfBoxes,
): DoubtsOfBoxes {
  const { level, clock: forecast } = forecasts[stage];
  const read = clocks.filter((_, index) => values[index] !== null);
  if (level === null || forecast === null || read.length < fewestOfMean) return new Map();
  if (read.some((clock) => single.has(box(clock)))) return new Map();
  const mean = clocks.reduce((sum, _, index) => {
    const value = values[index] ?? null;
    return value === null ? sum : sum + (value - (forecast.departures_mm[index] ?? 0)) / read.length;
  }, 0);
  const { z } = readingScore(level.line, level.x, mean, read.length / clocks.length);
  if (Math.abs(z) <= questionedScore) return new Map();
  return new Map(read.map((clock) => [box(clock), [{ kind: 'set', z }]]));
}
