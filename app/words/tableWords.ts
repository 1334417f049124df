import type { FleetResult } from '../../lib/analysis/types';
import { formatDate } from '../../lib/charts/format';
import type { JournalEntry } from '../../lib/records/decisions/Decision';
import type { EditedTable } from '../../lib/records/decisions/editedTables';
import { tablesPage } from '../../lib/records/decisions/tableEdits';
import type { NotFitting } from '../../lib/records/tables/pastedBlock';
import type { TableRow } from '../../lib/records/tables/TableRow';
import { type DraftRow, isChanged } from '../../lib/records/tables/tableDraft';
import { counted } from './counted';
import { capitalised } from './seriesName';

import { siteFleetName } from './siteFleet';
import type { TermName } from './terms';

/** What a table and its rows are called. */
const names: Readonly<Record<EditedTable, readonly [one: string, many: string]>> = {
  limits: ['limit', 'limits'],
  parts: ['part', 'parts'],
  installations: ['installation', 'installations'],
  events: ['event', 'events'],
  plan: ['row of the plan', 'rows of the plan'],
  characteristics: ['added characteristic', 'added characteristics'],
};

/** What a table is about, where that is a term. */
export const tableTerms: { readonly [Table in EditedTable]?: TermName } = {
  limits: 'limit',
  installations: 'position',
  plan: 'overhaul',
  characteristics: 'characteristic',
};

/** Name of a table for a heading or a choice. */
export function tableName(table: EditedTable): string {
  return table === 'plan' ? 'Plan' : capitalised(names[table][1]);
}

/** The answer of the Tables page: how many rows are in force, where they come from, what is held. */
export function tableSentence(
  table: EditedTable,
  rows: readonly TableRow[],
  source: FleetResult['source'],
): string {
  const used = rows.filter(({ isUsed }) => isUsed);
  const edited = used.filter(({ file }) => file === tablesPage).length;
  const held = rows.length - used.length;
  const [one, many] = names[table];
  const whose = source === 'demo' ? ` of the ${siteFleetName()}` : '';
  if (rows.length === 0 && source === 'own') return emptyTable(table);
  const inForce = `${counted(used.length, `${one}${whose} is`, `${many}${whose} are`)} in force`;
  const parts = [
    ...(edited > 0 ? [`${counted(edited, 'of them was', 'of them were')} edited here`] : []),
    ...(held > 0 ? [`${counted(held, 'more is held, and not used', 'more are held, and not used')}`] : []),
  ];
  return `${[inForce, ...parts].join('; ')}.`;
}

/** What to do where a table of the own files has no row. */
function emptyTable(table: EditedTable): string {
  return `No ${names[table][0]} is on record: add a row here, or ${table}.csv on the Records page.`;
}

/** Where a row comes from: 'limits.csv, line 3' or 'edited here, AB, 2026-03-01', and why it is held. */
export function sourceWords(row: TableRow, journal: readonly JournalEntry[]): string {
  const { file, line, isDerived, reasons } = row;
  const entry = file === tablesPage ? journal[line - 1] : undefined;
  const where =
    file !== tablesPage
      ? `${file}, line ${line}${isDerived ? ', as answered' : ''}`
      : ['edited here', ...(entry === undefined ? [] : [entry.by, formatDate(entry.at.slice(0, 10))])]
          .filter((word) => word !== '')
          .join(', ');
  return reasons.length === 0
    ? where
    : `${where}; ${row.isUsed ? 'a cell is held' : 'held'}: ${reasons.join('; ')}`;
}

/** Where a row being edited comes from, and what would become of it. */
export function draftWords(row: DraftRow, journal: readonly JournalEntry[]): string {
  if (row.origin === null) return row.isRemoved ? 'added and removed again' : 'added, not applied yet';
  const source = sourceWords(row.origin, journal);
  if (row.isRemoved) return `to be removed; ${source}`;
  return isChanged(row) ? `changed, not applied yet; ${source}` : source;
}

/** How far the edits have come. */
export function editsSentence(edits: number, faults: number): string {
  if (edits === 0) return 'Nothing is edited: nothing would change.';
  const edited = `${counted(edits, 'edited row is', 'edited rows are')} not applied yet, and would be lost on leaving the page.`;
  return faults === 0
    ? edited
    : `${edited} ${counted(faults, 'cell asks', 'cells ask')} for something first: see under ${faults === 1 ? 'it' : 'them'}.`;
}

/** What of a pasted block found no cell. */
export function pastedSentence(cells: number, notFitting: readonly NotFitting[]): string {
  const pasted = `${counted(cells, 'cell')} pasted.`;
  if (notFitting.length === 0) return pasted;
  const listed = notFitting.map(({ line, text, why }) => `line ${line}, ‘${text}’ (${why})`).join('; ');
  return `${pasted} ${counted(notFitting.length, 'text did', 'texts did')} not fit: ${listed}.`;
}
