import { drawsFor } from './draws';
import type { Visit } from './installations';
import { vanishingRunout } from './oddities';
import { clocksOf, drawRun, drawUnit, frameTruth, type TrueRun, trueLevel, visitAt } from './trueRuns';
import type { CharacteristicCode } from './wearTruth';

export type Stage = 'found' | 'left';

/** A reading as the gauge gave it, before rounding. */
export interface GaugeReading {
  readonly code: CharacteristicCode;
  readonly visit: number;
  readonly stage: Stage;
  readonly clock: string;
  readonly value_mm: number;
}

export interface Simulated {
  readonly readings: readonly GaugeReading[];
  readonly runs: readonly TrueRun[];
}

/** Decides from what was found whether the overhaul resets the series; `age` counts the overhauls of the run, this one included. */
export type ResetRule = (visit: number, found_mm: number, age: number) => boolean;

/** Carries one characteristic of one unit through its life: as left at delivery, as found and as left at every overhaul. */
export function simulate(code: CharacteristicCode, visits: readonly Visit[], resetsAt: ResetRule): Simulated {
  const delivery = visitAt(visits, 0);
  const own = drawUnit(code, delivery.unit, frameTruth(code, delivery));
  let run = drawRun(code, visits, 0, own);
  let age = 0;
  const runs = [run];
  const readings = [...measure(run, delivery, 0, 'left')];
  for (let index = 1; index < visits.length; index++) {
    const visit = visitAt(visits, index);
    const found = measure(run, visit, index, 'found');
    age += 1;
    if (resetsAt(index, found[0]?.value_mm ?? 0, age)) {
      run = drawRun(code, visits, index, own);
      runs.push(run);
      age = 0;
    }
    readings.push(...found, ...measure(run, visit, index, 'left'));
  }
  return { readings, runs };
}

/** Readings of one stage of one visit: level plus the gauge's noise; a length never comes out negative. */
function measure(run: TrueRun, visit: Visit, index: number, stage: Stage): readonly GaugeReading[] {
  const { code } = run;
  const truth = frameTruth(code, visit);
  const noise = drawsFor(`${visit.unit}/${code}/${index}/${stage}`);
  const dirty =
    code === 'runout' &&
    stage === 'found' &&
    visit.unit === vanishingRunout.unit &&
    index === vanishingRunout.visit;
  return clocksOf(truth).map((clock) => {
    const level = trueLevel(run, visit.unitHours, clock) + (dirty ? vanishingRunout.rise_mm : 0);
    return { code, visit: index, stage, clock, value_mm: Math.max(0, noise.normal(level, truth.sdNoise)) };
  });
}
