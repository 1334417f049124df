import { boxName } from './benchEntry';
import { clocksOf, stages } from './boxes';
import { boxLine, expectedOf } from './boxLine';
import { clockDoubts } from './clockDoubts';
import { readingDoubts } from './readingDoubts';
import { pairDoubts } from './stageDoubts';
import type { TypedReading } from './typedReading';
import type { BoxCheck, CheckBasis, Doubt } from './types';

/** Readings as typed, by the name of their box. */
export type TypedReadings = ReadonlyMap<string, TypedReading>;

/** Doubts by the name of the box that they are about. */
export type DoubtsOfBoxes = ReadonlyMap<string, readonly Doubt[]>;

/**
 * Checks what was typed against forecast, scale, the other clock positions, the other stage and the value before stripping.
 *
 * What explains several boxes at once (positions or stages exchanged) takes the place of what would be asked about each.
 */
export function checkReadings(bases: readonly CheckBasis[], typed: TypedReadings): readonly BoxCheck[] {
  return bases.flatMap((basis) => {
    const single = new Map(stages.flatMap((stage) => [...readingDoubts(basis, stage, typed)]));
    const bySet = new Map(stages.flatMap((stage) => [...clockDoubts(basis, stage, typed, single)]));
    const byPair = pairDoubts(basis, typed, new Map([...single, ...bySet]));
    return stages.flatMap((stage) =>
      clocksOf(basis).map((clock): BoxCheck => {
        const box = boxName(basis.characteristic, stage, clock);
        const entry = typed.get(box) ?? { kind: 'none' };
        const reading = entry.kind === 'read' ? entry.reading : null;
        const doubts = byPair.get(box) ?? bySet.get(box) ?? single.get(box) ?? [];
        return {
          box,
          characteristic: basis.characteristic,
          stage,
          clock,
          lower_mm: reading?.lower_mm ?? null,
          upper_mm: reading?.upper_mm ?? null,
          isOpen: reading !== null && reading.upper_mm === null,
          unreadable: entry.kind === 'unreadable' ? entry.reason : null,
          expected:
            doubts.length === 0 ? null : expectedOf(boxLine(basis, stage, clock), basis.neverNegative),
          doubts,
        };
      }),
    );
  });
}
