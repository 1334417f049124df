import type { ColumnMeaning, SheetLayout } from '../../records/intake/types';
import type { MeaningOf } from './sheetSql';

/** Why a sheet is not read though a person said what its columns are. */
export function cannotHold(faults: readonly string[]): string {
  return `What its columns are said to be cannot hold together. ${faults.join(' ')} Nothing was imported from it: correct the columns, or take the decision back.`;
}

/** Column names in one sentence: a sheet of hundreds would fill the page. */
const namesTold = 12;

function columnNames({ columns }: SheetLayout): string {
  const names = columns.filter((name) => name !== '');
  const more = names.length - namesTold;
  return `${names.slice(0, namesTold).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

/** Which columns an overhaul sheet needs and this one has not. */
export function whatIsMissing(layout: SheetLayout, roles: MeaningOf): string {
  // Where nothing is measured no column gets a role, also one that plainly says what it is.
  const isThere = (role: 'unit' | 'date') =>
    roles.has(role) || layout.columns.some((name) => name.trim().toLowerCase() === role);
  const missing = [
    isThere('unit') ? null : 'a unit (serial)',
    isThere('date') ? null : 'a date',
    roles.has('reading') || roles.has('value')
      ? null
      : 'readings (thrust play, runout, tip clearances, nut stand-out)',
  ].filter((word) => word !== null);
  return `Not an overhaul sheet: no column for ${missing.join(', ')} was found among ${columnNames(layout)}. Nothing was imported from it. If a column holds it all the same, say so on the Records page. Also looked for the canonical tables, whose columns are listed there.`;
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
