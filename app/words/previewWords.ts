import type { PreviewLine, PreviewReading, SheetPreview } from '../../lib/analysis/engine/EngineApi';
import type { FleetResult, Problem } from '../../lib/analysis/types';
import { formatDate, formatHours, formatLength } from '../../lib/charts/format';
import { counted } from './counted';
import { midSentence, seriesName } from './seriesName';

/** Unit, day and hours of a line: 'P-6101, 2016-05-07, 11 240 h'. */
export function lineWords({ unit, date, unitHours }: PreviewLine): string | null {
  if (unit === null) return null;
  return `${unit}, ${formatDate(date)}, ${formatHours(unitHours)}`;
}

/** A length of a reading without its unit; an interval with both ends. */
function valueWords({ value_mm, lower_mm, upper_mm }: PreviewReading): string {
  return lower_mm === null || upper_mm === null
    ? formatLength(value_mm)
    : `${formatLength(lower_mm)} to ${formatLength(upper_mm)}`;
}

/** Readings in words, clock positions of a set together: 'tip clearance, turbine, as found: 0.880 (12), 0.810 (3) mm'. */
export function previewReadingWords(
  readings: readonly PreviewReading[],
  characteristics: FleetResult['characteristics'],
): readonly string[] {
  const sets = new Map<string, string[]>();
  for (const reading of readings) {
    const { characteristic, stage, clock } = reading;
    const name = `${midSentence(seriesName(characteristic, characteristics))}, as ${stage}`;
    const place = clock === null ? '' : ` (${clock})`;
    sets.set(name, [...(sets.get(name) ?? []), `${valueWords(reading)}${place}`]);
  }
  return [...sets].map(([name, values]) => `${name}: ${values.join(', ')}\u00a0mm`);
}

/** What is held or interpreted of a line: '‘30.02.2018’ in ‘Datum’: held, day 30 of month 2 is no day'. */
export function previewProblemWords({ column, raw, reason, action }: Problem): string {
  const what = raw === '' ? '' : `‘${raw}’`;
  const where = column === '' ? '' : `${what === '' ? '' : ' in '}‘${column}’`;
  return `${what}${where}${what + where === '' ? '' : ': '}${action}, ${reason}`;
}

/** What would come of the lines read, in a sentence. */
export function previewSentence(preview: SheetPreview): string {
  const { sheet, isPart, readingsIn, readingsUsed, readingsHeld, questions } = preview;
  if (sheet.faults.length > 0) return sheet.faults.join(' ');
  if (sheet.reason !== null) return sheet.reason;
  const lines = isPart ? 'In the first 200 lines of the file' : 'In the whole file';
  const cells = counted(readingsIn, 'cell for readings', 'cells for readings');
  const asked = questions === 0 ? '' : ` ${counted(questions, 'question')} would be asked.`;
  return `${lines}: ${cells}, ${counted(readingsUsed, 'reading')} used, ${readingsHeld} held.${asked}`;
}

/** The button that applies: to this file, and to how many others of its shape. */
export function applyWords(others: number): string {
  return others === 0
    ? 'Apply to this file'
    : `Apply to this and ${counted(others, 'other file')} of the same shape`;
}
