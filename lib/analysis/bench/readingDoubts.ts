import { scaleDoubt } from '../../records/intake/scaleDoubt';
import { boxName, type Clock, type Stage } from './benchEntry';
import { clocksOf } from './boxes';
import { boxLine, scoreOf } from './boxLine';
import type { DoubtsOfBoxes, TypedReadings } from './checkReadings';
import { digitsExchanged, scaled, scaleSuggestion } from './suggestions';
import { middle_mm, type Reading } from './typedReading';
import type { CheckBasis, Doubt } from './types';

/** Scores beyond this are questioned. */
export const questionedScore = 3;
/** A score beyond this is, too, if a usual slip of scale brings it within one standard deviation of what is expected. */
const questionedScaleScore = 2;

/** What is to be asked about each reading of a stage by itself: its sign, its scale, its forecast. */
export function readingDoubts(basis: CheckBasis, stage: Stage, typed: TypedReadings): DoubtsOfBoxes {
  const doubts = new Map<string, readonly Doubt[]>();
  for (const clock of clocksOf(basis)) {
    const box = boxName(basis.characteristic, stage, clock);
    const entry = typed.get(box);
    if (entry?.kind !== 'read') continue;
    const doubt = doubtOf(basis, stage, clock, entry.reading);
    if (doubt !== null) doubts.set(box, [doubt]);
  }
  return doubts;
}

function doubtOf(basis: CheckBasis, stage: Stage, clock: Clock | null, reading: Reading): Doubt | null {
  if (basis.neverNegative && reading.lower_mm < 0) return { kind: 'negative' };
  const at = boxLine(basis, stage, clock);
  if (at === null) return unusualSize(basis, reading);
  const z = scoreOf(at, reading);
  if (Math.abs(z) <= questionedScaleScore) return null;
  const isFar = Math.abs(z) > questionedScore;
  const scale = scaleSuggestion(
    reading,
    (factor) => Math.abs(scoreOf(at, reading, factor)) / (isFar ? questionedScore : 1),
  );
  if (scale !== null) return { kind: 'scale', ...scale };
  if (!isFar) return null;
  const toReading = (value: number) => ({ ...reading, ...scaledTo(reading, value) });
  const suggestion = digitsExchanged(
    reading.text,
    (value) => Math.abs(scoreOf(at, toReading(value))) / questionedScore,
  );
  return { kind: 'forecast', z, suggestion };
}

/** Without a forecast only the usual size of such readings can be held against it. */
function unusualSize({ characteristic, usual_mm }: CheckBasis, reading: Reading): Doubt | null {
  const size_mm = middle_mm(reading);
  if (usual_mm === null || !(size_mm > 0) || reading.upper_mm === null) return null;
  const slip = scaleDoubt(characteristic, size_mm, usual_mm, reading.uom);
  return slip === null ? null : { kind: 'scale', ...scaled(reading, slip) };
}

/** The same reading with another number in its unit of measure. */
function scaledTo({ lower, lower_mm }: Reading, value: number): Pick<Reading, 'lower_mm' | 'upper_mm'> {
  const value_mm = lower === 0 ? value : (value * lower_mm) / lower;
  return { lower_mm: value_mm, upper_mm: value_mm };
}
