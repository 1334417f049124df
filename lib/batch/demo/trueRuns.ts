import { type Draws, drawsFor } from './draws';
import type { Visit } from './installations';
import { driftingRunout, fastThrustBearing, highWorkshop, openingTurbineTip } from './oddities';
import { type CharacteristicCode, type WearTruth, wearTruths } from './wearTruth';

export type Shape = Readonly<Record<string, number>>;

/** Truth of one run: level at clock c after x = run hours / 10,000 is start + rate x + shape[c], in mm. */
export interface TrueRun {
  readonly code: CharacteristicCode;
  readonly fromVisit: number;
  readonly fromUnitHours: number;
  readonly start_mm: number;
  readonly rate_mm_per_10kh: number;
  readonly shape_mm: Shape;
}

/** What one unit adds to its frame's truth, in every run. */
export interface UnitTruth {
  readonly start_mm: number;
  readonly rate_mm_per_10kh: number;
  readonly shape_mm: Shape;
}

export const singleClock: readonly string[] = [''];
export const fourClocks: readonly string[] = ['12', '3', '6', '9'];

/** Level of a run at the given unit hours and clock position, mm. */
export function trueLevel(run: TrueRun, unitHours: number, clock: string): number {
  return (
    run.start_mm +
    (run.rate_mm_per_10kh * (unitHours - run.fromUnitHours)) / 10_000 +
    (run.shape_mm[clock] ?? 0)
  );
}

/** Clock positions at which a characteristic is read. */
export function clocksOf(truth: WearTruth): readonly string[] {
  return truth.vertical === undefined ? singleClock : fourClocks;
}

/** Truth of the frame that the unit belongs to. */
export function frameTruth(code: CharacteristicCode, visit: Visit): WearTruth {
  const truth = wearTruths[visit.frame][code];
  if (truth === undefined)
    throw new Error(`frameTruth requires a characteristic read on ${visit.frame}, got '${code}'`);
  return truth;
}

/** Draws what one unit adds. */
export function drawUnit(code: CharacteristicCode, unit: string, truth: WearTruth): UnitTruth {
  const draws = drawsFor(`${unit}/${code}`);
  return {
    start_mm: draws.normal(0, truth.sdStartUnit),
    rate_mm_per_10kh: draws.normal(0, truth.sdRateUnit),
    shape_mm: drawShape(draws, truth, truth.vertical?.mean ?? 0, truth.vertical?.sdUnit ?? 0),
  };
}

/** Draws the run that starts as left at visit `index`. */
export function drawRun(
  code: CharacteristicCode,
  visits: readonly Visit[],
  index: number,
  own: UnitTruth,
): TrueRun {
  const visit = visitAt(visits, index);
  const truth = frameTruth(code, visit);
  const draws = drawsFor(`${visit.unit}/${code}/run/${index}`);
  const shape = drawShape(draws, truth, 0, truth.vertical?.sdRun ?? 0);
  const odd = oddPart(code, visits, index, truth);
  return {
    code,
    fromVisit: index,
    fromUnitHours: visit.unitHours,
    start_mm: truth.start + own.start_mm + draws.normal(0, truth.sdStartRun) + odd.start_mm,
    rate_mm_per_10kh:
      truth.rate + own.rate_mm_per_10kh + draws.normal(0, truth.sdRateRun) + odd.rate_mm_per_10kh,
    shape_mm: Object.fromEntries(
      clocksOf(truth).map((clock) => [clock, (own.shape_mm[clock] ?? 0) + (shape[clock] ?? 0)]),
    ),
  };
}

/** The visit of that number. */
export function visitAt(visits: readonly Visit[], index: number): Visit {
  const visit = visits[index];
  if (visit === undefined) throw new Error(`visitAt requires a visit below ${visits.length}, got ${index}`);
  return visit;
}

/** What the fleet's intended oddities add to one run. */
function oddPart(code: CharacteristicCode, visits: readonly Visit[], index: number, truth: WearTruth) {
  const visit = visitAt(visits, index);
  if (code === 'runout' && visit.unit === driftingRunout.unit && index >= driftingRunout.fromVisit) {
    const since_h = visit.unitHours - visitAt(visits, driftingRunout.fromVisit).unitHours;
    const rate = driftingRunout.rate_mm_per_10kh;
    return { start_mm: (rate * since_h) / 10_000, rate_mm_per_10kh: rate };
  }
  if (
    code === 'tip_turbine' &&
    visit.unit === openingTurbineTip.unit &&
    index >= openingTurbineTip.fromVisit
  ) {
    return { start_mm: 0, rate_mm_per_10kh: openingTurbineTip.rate_mm_per_10kh };
  }
  if (code !== 'thrust_play') return { start_mm: 0, rate_mm_per_10kh: 0 };
  return {
    start_mm: visit.opening?.workshop === highWorkshop.workshop ? highWorkshop.shift_mm[visit.frame] : 0,
    rate_mm_per_10kh:
      visit.unit === fastThrustBearing.unit ? truth.rate * (fastThrustBearing.rateFactor - 1) : 0,
  };
}

/** What each clock position adds to the mean: vertical (12 less 6)/2, horizontal (3 less 9)/2 and ovality. */
function drawShape(draws: Draws, truth: WearTruth, mean: number, sd: number): Shape {
  if (truth.vertical === undefined) return { '': 0 };
  const vertical = draws.normal(mean, sd);
  const horizontal = draws.normal(0, sd);
  const ovality = draws.normal(0, sd / 2);
  return {
    '12': vertical + ovality,
    '3': horizontal - ovality,
    '6': ovality - vertical,
    '9': -horizontal - ovality,
  };
}
