import { isoOf } from './days';
import {
  changedEarly,
  driftingRunout,
  engineHoursOnly,
  fastThrustBearing,
  feelerReadings,
  highWorkshop,
  meterCorrected,
  meterReplaced,
  missingAsLeft,
  missingClock,
  move,
  noRatedLife,
  openingTurbineTip,
  ranOn,
  vanishingRunout,
} from './oddities';
import { visitAt } from './trueRuns';
import type { UnitHistory } from './unitHistory';

/** Every oddity of the fleet with its size, its dates and one sentence. */
export function oddities(histories: readonly UnitHistory[]) {
  const dateOf = (unit: string, visit: number) => {
    const history = histories.find((candidate) => candidate.unit === unit);
    if (history === undefined) throw new Error(`oddities requires a unit of the fleet, got '${unit}'`);
    return isoOf(visitAt(history.visits, visit).day);
  };
  const dated = (
    list: readonly (readonly [unit: string, visit: number, ...rest: (string | undefined)[]])[],
  ) =>
    list.map(([unit, visit, characteristic, clock]) => ({
      unit,
      date: dateOf(unit, visit),
      characteristic,
      clock,
    }));
  return [
    {
      code: 'drifting_runout',
      text: 'runout rises steadily from this date and the rise persists through reassembly: the shaft',
      ...driftingRunout,
      from: dateOf(driftingRunout.unit, driftingRunout.fromVisit),
    },
    {
      code: 'vanishing_runout',
      text: 'runout high as found once and gone as left: dirt in the contact faces',
      ...vanishingRunout,
      date: dateOf(vanishingRunout.unit, vanishingRunout.visit),
    },
    {
      code: 'fast_thrust_bearing',
      text: 'thrust play grows this many times as fast as its sisters expect',
      ...fastThrustBearing,
    },
    {
      code: 'opening_turbine_tip',
      text: 'turbine tip clearance opens faster by this rate since this date',
      ...openingTurbineTip,
      from: dateOf(openingTurbineTip.unit, openingTurbineTip.fromVisit),
    },
    {
      code: 'high_workshop',
      text: 'closes every new thrust bearing with this much more play',
      ...highWorkshop,
    },
    {
      code: 'unit_moved',
      text: 'taken to store, then fitted to another engine',
      ...move,
      taken_out: dateOf(move.unit, move.from.visit),
    },
    { code: 'meter_replaced', text: 'the new meter starts at 0', ...meterReplaced },
    {
      code: 'meter_corrected',
      text: 'the meter had stood still: add the hours to later readings',
      ...meterCorrected,
    },
    {
      code: 'engine_hours_only',
      text: 'unit hours are not given and must be derived',
      at: dated(engineHoursOnly),
    },
    { code: 'ran_on', text: 'worn thrust bearing left in', at: dated(ranOn) },
    {
      code: 'changed_early',
      text: 'thrust bearing changed before the usual rule asked for it',
      at: dated(changedEarly),
    },
    { code: 'interval_readings', text: 'feelers: goes and does not go', at: dated(feelerReadings) },
    { code: 'missing_as_left', text: 'as-left readings never written down', at: dated(missingAsLeft) },
    { code: 'missing_clock', text: 'one clock position not read', at: dated(missingClock) },
    { code: 'no_rated_life', text: 'rated life not stated', units: noRatedLife },
  ];
}
