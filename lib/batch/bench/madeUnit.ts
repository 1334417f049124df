import { type Draws, drawsFor } from '../demo/draws';
import { groupTruth, type Measured, measured, type SeriesTruth } from './groupTruth';

/** One reading of a made overhaul. */
export interface MadeReading {
  readonly characteristic: Measured;
  readonly stage: 'found' | 'left';
  readonly clock: '' | '12' | '3' | '6' | '9';
  readonly value_mm: number;
}

/** One overhaul of a made unit. */
export interface MadeOverhaul {
  readonly overhaul: string;
  readonly unit: string;
  /** YYYY-MM-DD. */
  readonly date: string;
  readonly unitHours: number;
  readonly workshop: string;
  /** The thrust bearing was fitted. */
  readonly hasNewBearing: boolean;
  readonly readings: readonly MadeReading[];
}

/** The part of a made unit's wear that lasts a run. */
interface Run {
  readonly start_h: number;
  readonly start_mm: number;
  readonly slope_mm_per_10kh: number;
}

export const overhaulsPerUnit = 10;
const day_ms = 86_400_000;
const hoursPerDay = 20;
const workshops = ['North yard', 'South yard', 'Harbour works'] as const;
/** The thrust bearing is fitted at every third overhaul. */
const bearingEvery = 3;

/** Name of a made unit; names sort as numbers do. */
export function unitName(number: number): string {
  return `T-${String(number).padStart(7, '0')}`;
}

/**
 * The history of one made unit: ten overhauls from delivery on, drawn from the wear model with the truth of its group, the same
 * every time. Every assembly starts a run, but for thrust play, whose run goes on until the thrust bearing is fitted.
 */
export function madeUnit(number: number, group: number): readonly MadeOverhaul[] {
  const draws = drawsFor(`bench unit ${number}`);
  const truth = groupTruth(group);
  const own = Object.fromEntries(
    measured.map(({ characteristic }) => [characteristic, ownWear(truth[characteristic], draws)]),
  ) as Record<Measured, ReturnType<typeof ownWear>>;
  const runs = Object.fromEntries(
    measured.map(({ characteristic }) => [characteristic, own[characteristic].newRun(0)]),
  ) as Record<Measured, Run>;
  let day_ms_since1970 = Date.UTC(2013, 0, 1) + Math.floor(draws.uniform() * 365) * day_ms;
  let unitHours = 0;
  return Array.from({ length: overhaulsPerUnit }, (_, place) => {
    if (place > 0) {
      const runHours = 4000 + Math.floor(draws.uniform() * 6000);
      unitHours += runHours;
      day_ms_since1970 += Math.ceil(runHours / hoursPerDay) * day_ms;
    }
    const hasNewBearing = place > 0 && place % bearingEvery === 0;
    const readings: MadeReading[] = [];
    for (const { characteristic, clocks } of measured) {
      for (const stage of ['found', 'left'] as const) {
        const isReset = characteristic !== 'thrust_play' || hasNewBearing;
        if (stage === 'left' && isReset) runs[characteristic] = own[characteristic].newRun(unitHours);
        for (const clock of clocks)
          readings.push({
            characteristic,
            stage,
            clock,
            value_mm: own[characteristic].read(runs[characteristic], unitHours, clock),
          });
      }
    }
    return {
      overhaul: `${unitName(number)}/${place + 1}`,
      unit: unitName(number),
      date: new Date(day_ms_since1970).toISOString().slice(0, 10),
      unitHours,
      workshop: workshops[Math.floor(draws.uniform() * workshops.length)] ?? workshops[0],
      hasNewBearing,
      readings,
    };
  });
}

/** How a unit departs from its group in one characteristic, and how its runs are drawn and read. */
function ownWear(truth: SeriesTruth, draws: Draws) {
  const start_mm = truth.intercept_mm + draws.normal(0, truth.sdStartUnit_mm);
  const slope_mm_per_10kh = truth.slope_mm_per_10kh + draws.normal(0, truth.sdSlopeUnit_mm_per_10kh);
  /** The rotor lies low in its bearings: the gap is wider at 12 than at 6. */
  const offset_mm = truth.intercept_mm / 25;
  const departure_mm = { '': 0, '12': offset_mm, '3': 0, '6': -offset_mm, '9': 0 } as const;
  return {
    newRun: (start_h: number): Run => ({
      start_h,
      start_mm: start_mm + draws.normal(0, truth.sdStartRun_mm),
      slope_mm_per_10kh: slope_mm_per_10kh + draws.normal(0, truth.sdSlopeRun_mm_per_10kh),
    }),
    read: (run: Run, unitHours: number, clock: MadeReading['clock']): number =>
      Math.max(
        0,
        run.start_mm +
          (run.slope_mm_per_10kh * (unitHours - run.start_h)) / 10_000 +
          departure_mm[clock] +
          draws.normal(0, truth.sdReading_mm),
      ),
  };
}
