import type { Frame, Workshop } from './stations';
import type { CharacteristicCode } from './wearTruth';

/** What is odd in the fleet on purpose. A visit counts the records of a unit: 0 is its delivery, 1 its first overhaul. */

export const driftingRunout = { unit: 'H-2005', fromVisit: 4, rate_mm_per_10kh: 0.0045 } as const;

/** A rise as found that is gone as left: dirt in the contact faces, not the shaft. */
export const vanishingRunout = { unit: 'O-3011', visit: 3, rise_mm: 0.035 } as const;

export const fastThrustBearing = { unit: 'O-3005', rateFactor: 1.6 } as const;

/** This workshop closes every new thrust bearing with too much play. */
export const highWorkshop: {
  readonly workshop: Workshop;
  readonly shift_mm: Readonly<Record<Frame, number>>;
} = {
  workshop: 'Fulmar Rotor Shop',
  shift_mm: { Lark: 0.03, Heron: 0.042, Osprey: 0.05, Kestrel: 0.035 },
};

/** Taken out of its engine at an overhaul, kept in store, fitted to another engine at that engine's next overhaul. */
export const move = {
  unit: 'H-2007',
  from: { engine: 'SKU-4', visit: 3 },
  to: { engine: 'AUK-2' },
  replacedBy: 'H-2022',
  leftInStore: 'H-2016',
} as const;

export const meterReplaced = { engine: 'AUK-3', date: '2020-05-14' } as const;
export const meterCorrected = { engine: 'GRY-2', date: '2021-09-03', hours: 312 } as const;

/** Overhauls that give the engine meter only: the hours of the unit must be derived. */
export const engineHoursOnly: readonly (readonly [unit: string, visit: number])[] = [
  ['H-2017', 1],
  ['H-2017', 3],
  ['H-2018', 3],
  ['H-2017', 4],
  ['H-2018', 5],
  ['L-1109', 5],
  ['L-1110', 5],
];

/** Erosion of the shroud ring opens the turbine tip gap of this unit faster than before. */
export const openingTurbineTip = { unit: 'O-3012', fromVisit: 1, rate_mm_per_10kh: 0.08 } as const;

/** The thrust bearing was changed at this overhaul though the usual rule would have run it on. */
export const changedEarly: readonly (readonly [unit: string, visit: number])[] = [
  [fastThrustBearing.unit, 5],
];

/** Overhauls where the worn thrust bearing was left in: none in stock. */
export const ranOn: readonly (readonly [unit: string, visit: number])[] = [
  [fastThrustBearing.unit, 6],
  ['H-2009', 5],
];

/** Taken with feelers: leaves of this step, written as 'goes' and 'does not go'. */
export const feelerStep_mm = 0.05;
export const feelerReadings: readonly (readonly [unit: string, visit: number, code: CharacteristicCode])[] = [
  ['H-2014', 1, 'tip_turbine'],
  ['H-2019', 1, 'tip_turbine'],
  ['H-2019', 1, 'thrust_play'],
];

/** As-left readings that were never written down; without a code, all of that overhaul. */
export const missingAsLeft: readonly (readonly [unit: string, visit: number, code?: CharacteristicCode])[] = [
  ['O-3004', 3],
  ['L-1103', 3, 'thrust_play'],
  ['H-2011', 2, 'thrust_play'],
  ['H-2013', 4, 'runout'],
  ['O-3009', 2, 'tip_compressor'],
  ['L-1112', 5, 'tip_turbine'],
];

/** One clock position could not be reached. */
export const missingClock: readonly (readonly [
  unit: string,
  visit: number,
  code: CharacteristicCode,
  clock: string,
])[] = [
  ['O-3002', 2, 'tip_turbine', '6'],
  ['L-1108', 3, 'tip_compressor', '9'],
];

/** Rated life is not stated for these units. */
export const noRatedLife: readonly string[] = ['L-1106', 'O-3016'];
export const ratedLife_h = 100_000;

/** Whether a list of (unit, visit, ...) names this unit and visit. */
export function names(
  list: readonly (readonly [unit: string, visit: number, ...rest: unknown[]])[],
  unit: string,
  visit: number,
) {
  return list.some(([listedUnit, listedVisit]) => listedUnit === unit && listedVisit === visit);
}
