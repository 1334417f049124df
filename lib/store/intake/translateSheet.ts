import type { Characteristic } from '../../records/characteristics';
import { cutBody, type OnPiece } from '../../records/csv/cutCsv';
import type { MeaningDecision } from '../../records/decisions/Decision';
import type { QuestionList } from '../../records/intake/Answers';
import { columnMeanings } from '../../records/intake/columnMeanings';
import {
  agreedSign,
  interpretDates,
  interpretHours,
  interpretWords,
} from '../../records/intake/interpretColumn';
import { type IntervalColumns, intervalColumns } from '../../records/intake/intervalColumns';
import { meaningFaults } from '../../records/intake/meaningFaults';
import { firstDistinct, type SheetColumns } from '../../records/intake/SheetColumns';
import { sheetShape } from '../../records/intake/sheetShape';
import type { ColumnMeaning, SheetLayout } from '../../records/intake/types';
import { kindOfWord } from '../../records/intake/words/cellWords';
import type { Connector } from '../Connector';
import { cellsUncut, type LoadedFile } from '../loadFile';
import { loadPieces } from '../loadPieces';
import { applyEdits } from '../rulings/applyEdits';
import { cutWithEdits } from '../rulings/heldLines';
import { dropLeftOutLines } from '../rulings/leaveOut';
import { joinIntervals } from './joinIntervals';
import { dropRepeatedLines, dropSuperseded, setAsideNonRows } from './otherLines';
import { loadOutcomes, type TextsOf, textsCountedOnce } from './outcomeTable';
import { translateLongReadings, translateWideReadings } from './readingColumns';
import { sheetEditTarget } from './sheetEditTarget';
import { cannotHold, sentenceOn, whatIsMissing } from './sheetSentences';
import {
  byRole,
  headersSql,
  type MeaningOf,
  ownHoursSql,
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
  /** Meanings of columns that a person decided, of any shape. */
  readonly decided: readonly MeaningDecision[];
}

/** What a sheet was understood as. */
export interface TranslatedSheet extends LoadedFile {
  readonly sheet: SheetColumns;
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
  onPiece: OnPiece = async () => {},
): Promise<TranslatedSheet> {
  const { name, layout } = sheet;
  const csv = await cutWithEdits(connector, name, sheet.bytes, layout.delimiter, (bytes) =>
    cutBody(bytes, layout.delimiter, layout.firstBodyLine, layout.columns, (share) => onPiece(0.1 * share)),
  );
  const columns = layout.columns.map((_, index) => `c${index}`);
  await loadPieces(connector, 'sheet', 'line', csv, (share) => onPiece(0.1 + 0.3 * share));
  const samples = await sampleTexts(connector, columns);
  const shape = sheetShape(layout.columns);
  questions.setShape(name, shape);
  const decided = sheet.decided.filter((one) => one.shape === shape);
  const meanings = withOwnNames(columnMeanings(layout.columns, samples, sheet.characteristics, decided));
  const faults = meaningFaults(meanings, decided, sheet.characteristics);
  const { others, intervals } = intervalColumns(meanings, layout.columns.length);
  const read = [...others, ...intervals.map(({ meaning }) => meaning)];
  const roles = byRole(read);
  const isUnderstood =
    faults.length === 0 &&
    roles.has('unit') &&
    roles.has('date') &&
    (roles.has('reading') || roles.has('value'));
  const common = {
    name,
    recognised: { kind: 'sheet', isLong: roles.has('value') } as const,
    held: csv.held,
    sheet: {
      shape,
      names: layout.columns,
      columns: meanings,
      samples: samples.map(firstDistinct),
      characteristics: sheet.characteristics,
      faults,
      reason: null,
    },
  };
  if (!isUnderstood) {
    await connector.run('DROP TABLE sheet');
    const message = faults.length > 0 ? cannotHold(faults) : whatIsMissing(layout, roles);
    return {
      ...common,
      sheet: { ...common.sheet, reason: message },
      recognised: { kind: 'none', message },
      rowsIn: 0,
      readingCells: 0,
      held: [],
      message,
    };
  }
  await applyEdits(connector, await sheetEditTarget(connector, name, meanings));
  await joinIntervals(connector, intervals);
  const aside = await setAsideNonRows(connector, name, layout, read);
  const readingCells = await countReadingCells(connector, read, roles);
  await dropLeftOutLines(connector, name);
  await dropRepeatedLines(connector, name, columns, roles.has('value'));
  await dropSuperseded(connector, name, columns, roles);
  await onPiece(0.45);
  const textsOf = textsCountedOnce(connector);
  await interpretOverhauls(connector, name, read, textsOf, questions);
  await onPiece(0.5);
  await connector.run(headersSql(name, roles));
  await connector.run(sheetOverhaulsSql(roles));
  await onPiece(0.6);
  await connector.run(rawOverhaulsSql(name, roles));
  await connector.run(ownHoursSql(name, roles));
  await onPiece(0.7);
  if (roles.has('value')) await translateLongReadings(connector, sheet, read, roles, textsOf, questions);
  await translateWideReadings(connector, name, read, roles, textsOf, questions);
  await connector.run(
    `DROP TABLE sheet; DROP TABLE sheet_overhauls; ${read.map(({ index }) => `DROP TABLE IF EXISTS outcome_${index}`).join('; ')}`,
  );
  return {
    ...common,
    rowsIn: csv.rowsIn - aside,
    readingCells,
    readingCellsUncut: cellsUncut(csv.held, cellsOfReadings(others, intervals, roles)),
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

/** Positions of the cells that hold each reading of a line. */
function cellsOfReadings(
  meanings: readonly ColumnMeaning[],
  intervals: readonly IntervalColumns[],
  roles: MeaningOf,
): readonly (readonly number[])[] {
  const ends = (['lower', 'upper'] as const).flatMap((role) => roles.get(role)?.index ?? []);
  return [
    ...meanings
      .filter(({ role }) => role === 'reading' || role === 'value')
      .map((meaning) => (roles.get('value') === meaning ? [meaning.index, ...ends] : [meaning.index])),
    ...intervals.map(({ lower, upper }) => [lower, upper].filter((index) => index !== null)),
  ];
}

async function interpretOverhauls(
  connector: Connector,
  file: string,
  meanings: readonly ColumnMeaning[],
  textsOf: TextsOf,
  questions: QuestionList,
): Promise<void> {
  const others = await signOfReadings(meanings, textsOf);
  for (const role of ['date', 'unit_hours', 'engine_hours', 'kind'] as const) {
    const meaning = meanings.find((one) => one.role === role);
    if (meaning === undefined) continue;
    const texts = await textsOf(meaning.index);
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
  meanings: readonly ColumnMeaning[],
  textsOf: TextsOf,
): Promise<'point' | 'comma' | null> {
  const columns: (readonly string[])[] = [];
  for (const meaning of meanings.filter(({ role }) => role === 'reading' || role === 'value'))
    columns.push((await textsOf(meaning.index)).map(({ text }) => text));
  return agreedSign(columns);
}
