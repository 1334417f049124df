import type { MadeOverhaul } from './madeUnit';

export const overhaulsHeader =
  'overhaul,unit,date,unit_hours,engine_hours,site,engine,bank,workshop,kind,fitted,remarks';
export const readingsHeader =
  'overhaul,characteristic,stage,clock,value,uom,lower,upper,source_file,source_row';

/** Line of overhauls.csv; every unit sits on an engine of its own. */
export function overhaulLine(
  { overhaul, unit, date, unitHours, workshop, hasNewBearing }: MadeOverhaul,
  bearing: string,
): string {
  return `${overhaul},${unit},${date},${unitHours},,Quay,${engineOf(unit)},A,${workshop},planned,${hasNewBearing ? bearing : ''},`;
}

/** Lines of readings.csv of one overhaul. */
export function readingLines({ overhaul, unit, readings }: MadeOverhaul, row: number): readonly string[] {
  return readings.map(
    ({ characteristic, stage, clock, value_mm }) =>
      `${overhaul},${characteristic},${stage},${clock},${value_mm.toFixed(3)},mm,,,${unit}.csv,${row}`,
  );
}

/** Engine that a made unit sits on. */
export function engineOf(unit: string): string {
  return unit.replace('T-', 'E-');
}
