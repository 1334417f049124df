import type { ColumnMeaning, SheetLayout } from '../../records/intake/types';
import type { MeaningOf } from './sheetSql';

/** Why a sheet is not read though a person said what its columns are. */
export function cannotHold(faults: readonly string[]): string {
  return `What its columns are said to be cannot hold together. ${faults.join(' ')} Nothing was imported from it: correct the columns, or take the decision back.`;
}

/** Which columns an overhaul sheet needs and this one has not. */
export function whatIsMissing(layout: SheetLayout, roles: MeaningOf): string {
  const missing = [
    roles.has('unit') ? null : 'a unit (serial)',
    roles.has('date') ? null : 'a date',
    roles.has('reading') || roles.has('value')
      ? null
      : 'readings (thrust play, runout, tip clearances, nut stand-out)',
  ].filter((word) => word !== null);
  return `Not an overhaul sheet: no column for ${missing.join(', ')} was found among ${layout.columns.filter((name) => name !== '').join(', ')}. Nothing was imported from it. If a column holds it all the same, say so on the Records page. Also looked for the canonical tables, whose columns are listed there.`;
}

/** How the sheet was understood as a whole, in sentences. */
export function sentenceOn(
  layout: SheetLayout,
  meanings: readonly ColumnMeaning[],
  remarks: readonly string[],
): string {
  const notUsed = meanings
    .filter(({ role, name }) => role === 'unused' && name !== '')
    .map(({ name }) => name);
  const sentences = [...layout.evidence, ...remarks];
  if (notUsed.length > 0) sentences.push(`Columns not used: ${notUsed.join(', ')}`);
  return sentences.map((sentence) => `${sentence.replace(/\.$/, '')}.`).join(' ');
}
