import { canonicalCsv } from '../../records/csv/canonicalCsv';
import type { UnitRow } from '../types';
import { type BenchEntry, boxName } from './benchEntry';
import { clocksOf, stages } from './boxes';
import { typedHours } from './typedReading';
import { typedReadings } from './typedReadings';
import type { BenchFile, SheetItem } from './types';

type Cells = Readonly<Record<string, string | number | null>>;

/**
 * The canonical files of an overhaul as typed: one overhaul, and its readings in the unit of measure that they were typed in.
 *
 * What gives no reading (one end of an interval, a text that is no number) and which questioned readings were measured again
 * stands in the remarks: nothing typed is lost. The same unit and day give the same names, so that a corrected overhaul takes
 * the place of the first. Throws without a day, hours, or a reading: see the entry's faults.
 */
export function benchFiles(
  unit: Pick<UnitRow, 'unit' | 'site' | 'engine' | 'bank'>,
  items: readonly Pick<SheetItem, 'characteristic' | 'shape'>[],
  entry: BenchEntry,
): readonly BenchFile[] {
  const { hours } = typedHours(entry.unitHours);
  const overhaul = `${entry.unit} ${entry.date}`;
  const { readings, notes } = readingRows(overhaul, items, entry);
  if (entry.date === '' || hours === null || readings.length === 0)
    throw new Error('benchFiles requires a day, the hours on the unit and one reading');
  const remarks = [entry.remarks.trim(), ...notes].filter((one) => one !== '').join('; ');
  const row: Cells = {
    overhaul,
    unit: entry.unit,
    date: entry.date,
    unit_hours: hours,
    site: unit.site,
    engine: unit.engine,
    bank: unit.bank,
    workshop: orNull(entry.workshop),
    kind: entry.kind,
    fitted: orNull(entry.fitted.join(';')),
    remarks: orNull(remarks),
  };
  const name = `bench-${fileWord(entry.unit)}-${entry.date}`;
  return [
    { name: `${name}-overhauls.csv`, text: canonicalCsv('overhauls', [row]) },
    { name: `${name}-readings.csv`, text: canonicalCsv('readings', readings) },
  ];
}

/** A serial as part of a file name; different serials stay different. */
function fileWord(serial: string): string {
  return serial.replaceAll(/[^\p{L}\p{N}.-]/gu, (letter) => `_${letter.codePointAt(0)?.toString(16)}_`);
}

function orNull(text: string): string | null {
  return text.trim() === '' ? null : text.trim();
}

function readingRows(
  overhaul: string,
  items: readonly Pick<SheetItem, 'characteristic' | 'shape'>[],
  entry: BenchEntry,
): { readonly readings: readonly Cells[]; readonly notes: readonly string[] } {
  const typed = typedReadings(items, entry);
  const readings: Cells[] = [];
  const notes: string[] = [];
  for (const { characteristic, shape } of items) {
    for (const stage of stages) {
      for (const clock of clocksOf({ shape })) {
        const box = boxName(characteristic, stage, clock);
        const one = typed.get(box);
        const named = `${characteristic.replaceAll('_', ' ')} as ${stage}${clock === null ? '' : ` at ${clock} o’clock`}`;
        if (one?.kind === 'unreadable') notes.push(`${named} typed as ‘${one.text.trim()}’`);
        if (one?.kind !== 'read') continue;
        const { text, uom, lower, upper } = one.reading;
        if (entry.stands[box] === entry.texts[box]) notes.push(`${named} measured again, stands`);
        if (upper === null) {
          notes.push(`${named} ${text} ${uom}`);
          continue;
        }
        const value = lower === upper ? { value: lower } : { lower, upper };
        readings.push({ overhaul, characteristic, stage, clock, uom, ...value });
      }
    }
  }
  return { readings, notes };
}
