import { dayOf, daysPerYear, isoOf, yearOf } from './days';
import { drawsFor } from './draws';
import { meterCorrected, meterReplaced } from './oddities';
import type { Engine } from './stations';

/** Hours run since the engine's first day, whole hours, whatever its meter says. */
export function hoursRun(engine: Engine, day: number): number {
  let hours = 0;
  for (let from = dayOf(engine.commissioned); from < day; ) {
    const until = Math.min(day, dayOf(`${yearOf(from) + 1}-01-01`));
    hours += ((until - from) / daysPerYear) * hoursInYear(engine, yearOf(from));
    from = until;
  }
  return Math.round(hours);
}

/** The first day on which the engine has run the given hours. */
export function dayAtHours(engine: Engine, hours: number): number {
  let day = dayOf(engine.commissioned);
  while (hoursRun(engine, day) < hours) day += Math.max(1, Math.floor((hours - hoursRun(engine, day)) / 24));
  return day;
}

/** Duty of one calendar year: the engine's usual one, some 5 % more or less. */
function hoursInYear(engine: Engine, year: number): number {
  const duty = drawsFor(`duty/${engine.engine}/${year}`).normal(
    engine.hoursPerYear,
    0.04 * engine.hoursPerYear,
  );
  return Math.min(7600, Math.max(4400, duty));
}

/** What the engine's meter shows: a replaced one starts at 0, one that had stopped shows too little. */
export function meterReading(engine: Engine, day: number): number {
  let reading = engine.meterAtStart_h + hoursRun(engine, day);
  if (engine.engine === meterReplaced.engine && isoOf(day) > meterReplaced.date)
    reading -= lastReadingOfOldMeter(engine);
  if (engine.engine === meterCorrected.engine && isoOf(day) > meterCorrected.date)
    reading -= meterCorrected.hours;
  return reading;
}

/** Last reading of the meter that was replaced. */
export function lastReadingOfOldMeter(engine: Engine): number {
  return engine.meterAtStart_h + hoursRun(engine, dayOf(meterReplaced.date));
}
