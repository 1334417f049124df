import type { BenchEntry } from './benchEntry';
import { checkBasis } from './checkBasis';
import { checkReadings } from './checkReadings';
import { entryFaults } from './entryFaults';
import { overhaulEffect } from './overhaulEffect';
import { seriesChecks } from './seriesChecks';
import { typedHours } from './typedReading';
import { typedReadings } from './typedReadings';
import type { BenchChecks } from './types';
import type { UnitBench } from './unitBench';

/** Everything that is to be said of an overhaul as typed so far; readings are checked at the hours typed. */
export function benchChecks(bench: UnitBench, asOf: string, entry: BenchEntry): BenchChecks {
  const unitHours = typedHours(entry.unitHours).hours;
  const typed = typedReadings(bench.items, entry);
  const bases = bench.items.map((item) => checkBasis(item, bench.unit, unitHours, entry.fitted));
  const series = bench.items.flatMap((item, index) => {
    const basis = bases[index];
    return basis === undefined ? [] : seriesChecks(basis, item.bounds, typed);
  });
  const readings = [...typed.values()].filter(
    (one) => one.kind === 'read' && one.reading.upper !== null,
  ).length;
  return {
    unitHours,
    entryFaults: entryFaults(bench, asOf, entry, readings),
    boxes: checkReadings(bases, typed),
    series,
    effect: overhaulEffect(bench, unitHours, entry.fitted, series),
    readings,
  };
}
