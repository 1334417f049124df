import type { Characteristic } from '../../records/characteristics';
import { normaliseBody } from '../../records/csv/normaliseCsv';
import type { QuestionList } from '../../records/intake/Answers';
import { columnMeanings } from '../../records/intake/columnMeanings';
import {
  agreedSign,
  interpretDates,
  interpretHours,
  interpretWords,
} from '../../records/intake/interpretColumn';
import type { ColumnMeaning, SheetLayout } from '../../records/intake/types';
import { kindOfWord } from '../../records/intake/words/cellWords';
import type { Connector } from '../Connector';
import type { LoadedFile } from '../loadFile';
import { dropRepeatedLines, dropSuperseded, setAsideNonRows } from './otherLines';
import { distinctTexts, loadOutcomes } from './outcomeTable';
import { translateLongReadings, translateWideReadings } from './readingColumns';
import {
  byRole,
  headersSql,
  type MeaningOf,
  ownRoleReasonsSql,
  rawOverhaulsSql,
  readingCellSql,
  sheetOverhaulsSql,
} from './sheetSql';

const sampleRows = 200;

/** A sheet in a workshop's own form, ready to be understood. */
export interface ForeignSheet {
  readonly name: string;
  /** UTF-8. */
  readonly bytes: Uint8Array;
  readonly layout: SheetLayout;
  readonly characteristics: readonly Characteristic[];
}

/** What a sheet was understood as. */
export interface TranslatedSheet extends LoadedFile {
  readonly meanings: readonly ColumnMeaning[];
  /** Filled cells of the reading columns. */
  readonly readingCells: number;
}

/**
 * Reads a sheet in any form into the raw tables: meanings of its columns, values settled column by column, readings with
 * stage, clock position and unit of measure. What cannot be known is asked through `questions`, and its cells wait.
 */
export async function translateSheet(
  connector: Connector,
  sheet: ForeignSheet,
  questions: QuestionList,
): Promise<TranslatedSheet> {
  const { name, layout } = sheet;
  const csv = normaliseBody(sheet.bytes, layout.delimiter, layout.firstBodyLine, layout.columns);
  const columns = layout.columns.map((_, index) => `c${index}`);
  if (csv.records === 0)
    await connector.run(
      `CREATE TABLE sheet (line VARCHAR, ${columns.map((column) => `${column} VARCHAR`).join(', ')})`,
    );
  else await connector.loadText('sheet', ['line', ...columns], csv.body);
  const samples = await sampleTexts(connector, columns);
  const meanings = withOwnNames(columnMeanings(layout.columns, samples, sheet.characteristics));
  const roles = byRole(meanings);
  const isUnderstood = roles.has('unit') && roles.has('date') && (roles.has('reading') || roles.has('value'));
  const common = {
    name,
    recognised: { kind: 'sheet', isLong: roles.has('value') } as const,
    held: csv.held,
    meanings,
  };
  if (!isUnderstood) {
    await connector.run('DROP TABLE sheet');
    return {
      ...common,
      recognised: { kind: 'none', message: whatIsMissing(layout, roles) },
      rowsIn: 0,
      readingCells: 0,
      held: [],
      message: whatIsMissing(layout, roles),
    };
  }
  const aside = await setAsideNonRows(connector, name, layout, meanings);
  const readingCells = await countReadingCells(connector, meanings, roles);
  await dropRepeatedLines(connector, name, columns);
  await dropSuperseded(connector, name, roles);
  await interpretOverhauls(connector, name, meanings, questions);
  await connector.run(headersSql(name, roles));
  await connector.run(sheetOverhaulsSql(name, roles));
  await connector.run(rawOverhaulsSql(name, roles.has('value')));
  if (roles.has('value')) await translateLongReadings(connector, sheet, meanings, roles, questions);
  await translateWideReadings(connector, name, meanings, questions);
  await connector.run(
    `DROP TABLE sheet; DROP TABLE sheet_overhauls; ${meanings.map(({ index }) => `DROP TABLE IF EXISTS outcome_${index}`).join('; ')}`,
  );
  return {
    ...common,
    rowsIn: csv.rowsIn - aside,
    readingCells,
    message: sentenceOn(layout, meanings, questions.remarksOn(name)),
  };
}

/** Columns of one name are told apart, so that each can be asked about and its cells found again. */
function withOwnNames(meanings: readonly ColumnMeaning[]): readonly ColumnMeaning[] {
  const taken = new Set<string>();
  return meanings.map((meaning) => {
    const name = taken.has(meaning.name) ? `${meaning.name} (column ${meaning.index + 1})` : meaning.name;
    taken.add(name);
    return { ...meaning, name };
  });
}

async function sampleTexts(
  connector: Connector,
  columns: readonly string[],
): Promise<readonly (readonly string[])[]> {
  const rows = await connector.query(`SELECT * FROM sheet LIMIT ${sampleRows}`);
  return columns.map((column) =>
    rows.map((row) => String(row[column] ?? '')).filter((text) => text.trim() !== ''),
  );
}

async function countReadingCells(
  connector: Connector,
  meanings: readonly ColumnMeaning[],
  roles: MeaningOf,
): Promise<number> {
  const columns = meanings.filter(({ role }) => role === 'reading' || role === 'value');
  const filled = columns.map((meaning) => `count(${readingCellSql(roles, meaning)})`).join(' + ');
  const [row] = await connector.query(`SELECT (${filled})::INTEGER AS n FROM sheet s`);
  return Number(row?.n ?? 0);
}

async function interpretOverhauls(
  connector: Connector,
  file: string,
  meanings: readonly ColumnMeaning[],
  questions: QuestionList,
): Promise<void> {
  const others = await signOfReadings(connector, meanings);
  for (const role of ['date', 'unit_hours', 'engine_hours', 'kind'] as const) {
    const meaning = meanings.find((one) => one.role === role);
    if (meaning === undefined) continue;
    const texts = await distinctTexts(connector, meaning.index);
    const column = { file, meaning, texts, questions };
    const outcomes =
      role === 'date'
        ? interpretDates(column)
        : role === 'kind'
          ? interpretWords(texts, kindOfWord, 'planned or unplanned')
          : interpretHours(column, others);
    await loadOutcomes(connector, meaning.index, outcomes);
    await connector.run(ownRoleReasonsSql(file, meaning));
  }
}

/** Decimal sign on which the reading columns that show one agree, as a hint for hours such as 12.480. */
async function signOfReadings(
  connector: Connector,
  meanings: readonly ColumnMeaning[],
): Promise<'point' | 'comma' | null> {
  const columns: (readonly string[])[] = [];
  for (const meaning of meanings.filter(({ role }) => role === 'reading' || role === 'value'))
    columns.push((await distinctTexts(connector, meaning.index)).map(({ text }) => text));
  return agreedSign(columns);
}

function whatIsMissing(layout: SheetLayout, roles: ReturnType<typeof byRole>): string {
  const missing = [
    roles.has('unit') ? null : 'a unit (serial)',
    roles.has('date') ? null : 'a date',
    roles.has('reading') || roles.has('value')
      ? null
      : 'readings (thrust play, runout, tip clearances, nut stand-out)',
  ].filter((word) => word !== null);
  return `Not an overhaul sheet: no column for ${missing.join(', ')} was found among ${layout.columns.filter((name) => name !== '').join(', ')}. Nothing was imported from it. Also looked for the canonical tables, whose columns are listed on the Records page.`;
}

/** How the sheet was understood as a whole, in sentences. */
function sentenceOn(
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
