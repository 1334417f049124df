import { type BenchEntry, boxName } from './benchEntry';
import { clocksOf, stages } from './boxes';
import type { TypedReadings } from './checkReadings';
import { typedReading } from './typedReading';

/** Readings as typed, by the name of their box; boxes that the unit has not are left out. */
export function typedReadings(
  items: readonly { readonly characteristic: string; readonly shape: 'single' | 'four_clock' }[],
  entry: BenchEntry,
): TypedReadings {
  return new Map(
    items.flatMap((item) =>
      stages.flatMap((stage) =>
        clocksOf(item).map((clock) => {
          const box = boxName(item.characteristic, stage, clock);
          return [box, typedReading(entry.texts[box] ?? '', entry.uom)] as const;
        }),
      ),
    ),
  );
}
