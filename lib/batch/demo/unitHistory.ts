import type { Visit } from './installations';
import { limits, thrustBearingOf } from './limitTables';
import { changedEarly, names, ranOn } from './oddities';
import { type GaugeReading, simulate } from './simulate';
import { frameTruth, type TrueRun, visitAt } from './trueRuns';
import { type CharacteristicCode, wearTruths } from './wearTruth';

/** Everything that happened to one unit. */
export interface UnitHistory {
  readonly unit: string;
  readonly visits: readonly Visit[];
  /** Codes of the parts fitted at each visit; none at delivery. */
  readonly fitted: readonly (readonly string[])[];
  readonly readings: readonly GaugeReading[];
  readonly runs: readonly TrueRun[];
}

/** Workshops change a thrust bearing by habit at the third overhaul of its run. */
const habit_overhauls = 3;
/** They change it earlier if the play found and this much of the usual growth would pass the limit before the next overhaul. */
const growthAllowed = 0.8;
/** They fit a new shroud ring when the gap found lies this near its limit. */
const shroudRingMargin_mm = 0.05;

/** The life of one unit, from its records' days and hours. */
export function unitHistory(visits: readonly Visit[]): UnitHistory {
  const delivery = visitAt(visits, 0);
  const { frame, unit } = delivery;
  const bearingLimit_mm = limits[frame].thrust_play[0];
  const thrust = simulate('thrust_play', visits, (index, found_mm, age) => {
    if (names(ranOn, unit, index)) return false;
    if (names(changedEarly, unit, index)) return true;
    const growth_mm =
      (frameTruth('thrust_play', delivery).rate * visitAt(visits, index).engine.interval_h) / 10_000;
    return age >= habit_overhauls || found_mm + growthAllowed * growth_mm > bearingLimit_mm;
  });
  const others = (Object.keys(wearTruths[frame]) as CharacteristicCode[])
    .filter((code) => code !== 'thrust_play')
    .map((code) => simulate(code, visits, () => true));
  const readings = [thrust, ...others].flatMap((simulated) => simulated.readings);
  return {
    unit,
    visits,
    readings,
    runs: [thrust, ...others].flatMap((simulated) => simulated.runs),
    fitted: visits.map((_, index) =>
      index === 0 ? [] : partsFitted(delivery, thrust.runs, readings, index),
    ),
  };
}

function partsFitted(
  { frame }: Visit,
  thrustRuns: readonly TrueRun[],
  readings: readonly GaugeReading[],
  index: number,
) {
  const letter = frame.slice(0, 1);
  const gaps = readings.filter(
    ({ code, visit, stage }) => code === 'tip_turbine' && visit === index && stage === 'found',
  );
  const open = gaps.some(
    ({ value_mm }) => value_mm > limits[frame].tip_turbine_largest[0] - shroudRingMargin_mm,
  );
  return [
    `GS-${letter}`,
    `JB-${letter}`,
    ...(thrustRuns.some(({ fromVisit }) => fromVisit === index) ? [thrustBearingOf(frame)] : []),
    ...(open ? [`SR-${letter}`] : []),
  ];
}
