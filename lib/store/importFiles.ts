import { canonicalTables } from '../records/canonicalTables';
import { builtInCharacteristics, type Characteristic } from '../records/characteristics';
import { hoursOutOfOrder } from '../records/hoursInOrder';
import type { ImportedFile, InputFile, Problem } from '../records/importReport';
import { type Answers, noAnswers, QuestionList } from '../records/intake/Answers';
import type { ColumnMeaning, Question } from '../records/intake/types';
import type { Connector } from './Connector';
import { holdRows } from './holdRows';
import { importReport } from './importReport';
import { askAboutJobsDatedTwice } from './intake/jobsDatedTwice';
import { askAboutScale } from './intake/scaleSlips';
import { ownReasonsSql } from './intake/sheetSql';
import { understandFile } from './intake/understandFile';
import type { LoadedFile } from './loadFile';
import { allCharacteristicsSql } from './sql/characteristics';
import {
  doubtfulReadingsSql,
  incompleteClockSetsSql,
  readingsInMillimetresSql,
  readingTextsSql,
} from './sql/doubtfulReadings';
import { createRecordTablesSql } from './sql/recordTables';
import { readingsOfUnknownRunSql, runsSql, settleRunsSql } from './sql/runs';
import { seriesReadingsSql } from './sql/seriesReadings';
import { repeatedRowsSql, typedTableSql } from './sql/typedTable';
import { fallingHoursSql, hoursByDateSql, overhaulsWithoutHoursSql, unitHoursSql } from './sql/unitHours';
import { addUnitsFromOverhaulsSql, overhaulsOfUnknownUnitSql } from './sql/units';

/** What an import came to; the records themselves are in the store. */
export interface ImportedData {
  readonly files: readonly ImportedFile[];
  readonly problems: readonly Problem[];
  /** All problems, those beyond the listed ones included. */
  readonly problemsFound: number;
  readonly readingsUsed: number;
  /** What could not be known; the cells that wait for it are among the problems. */
  readonly questions: readonly Question[];
  /** How the columns of each workshop's sheet were understood. */
  readonly meanings: ReadonlyMap<string, readonly ColumnMeaning[]>;
}

/** Called between the steps of an import; throws to stop it. */
export type OnStep = (step: string, share: number) => Promise<void>;

/** Choices of an import. */
export interface ImportOptions {
  /** Answers to earlier questions. */
  readonly answers?: Answers;
  /** How many problems are listed at the most; all if not given. */
  readonly problemsListed?: number;
}

/** More problems than any set of files can have. */
const everyProblem = 1e12;

/**
 * Takes files into the store: recognises each, reads every cell as text, converts and checks in SQL, derives unit hours,
 * and cuts series and runs. What cannot be used is held with its reason, what cannot be known is asked; nothing is fatal
 * but an error of the engine.
 */
export async function importFiles(
  connector: Connector,
  files: readonly InputFile[],
  onStep: OnStep,
  { answers = noAnswers, problemsListed = everyProblem }: ImportOptions = {},
): Promise<ImportedData> {
  await connector.run(createRecordTablesSql());
  const questions = new QuestionList(answers);
  const meanings = new Map<string, readonly ColumnMeaning[]>();
  const loaded = await loadAll(connector, files, questions, meanings, onStep);
  await onStep('Checking every cell', 0.5);
  for (const table of canonicalTables) {
    await connector.run(typedTableSql(table));
    await holdRows(connector, table.name, repeatedRowsSql(table));
  }
  await onStep('Placing overhauls and readings', 0.7);
  await connector.run(allCharacteristicsSql);
  await holdRows(connector, 'overhauls', overhaulsOfUnknownUnitSql);
  await connector.run(unitHoursSql);
  await holdRows(connector, 'overhauls', overhaulsWithoutHoursSql);
  await holdFallingHours(connector);
  await connector.run(addUnitsFromOverhaulsSql);
  await connector.run(readingTextsSql);
  await holdRows(connector, 'readings', doubtfulReadingsSql);
  await askAboutScale(connector, meanings.keys(), questions);
  await askAboutJobsDatedTwice(connector, meanings.keys(), questions);
  await holdRows(connector, 'readings', doubtfulReadingsSql);
  await holdRows(connector, 'readings', incompleteClockSetsSql);
  await onStep('Cutting series and runs', 0.85);
  await connector.run(readingsInMillimetresSql);
  await connector.run(seriesReadingsSql);
  await connector.run(runsSql);
  await holdRows(connector, 'readings', readingsOfUnknownRunSql);
  await connector.run(settleRunsSql);
  await connector.run(ownReasonsSql);
  return {
    ...(await importReport(connector, loaded, problemsListed)),
    questions: questions.questions,
    meanings,
  };
}

/** Loads every file; tables that add characteristics come first, since sheets may use them. */
async function loadAll(
  connector: Connector,
  files: readonly InputFile[],
  questions: QuestionList,
  meanings: Map<string, readonly ColumnMeaning[]>,
  onStep: OnStep,
): Promise<readonly LoadedFile[]> {
  const characteristics = [...builtInCharacteristics];
  const loaded: LoadedFile[] = [];
  for (const file of tablesFirst(files)) {
    await onStep(`Reading ${file.name}`, (0.5 * loaded.length) / files.length);
    const understood = await understandFile(connector, file, characteristics, questions);
    loaded.push(understood);
    if ('meanings' in understood) meanings.set(file.name, understood.meanings);
    const { recognised } = understood;
    if (recognised.kind === 'table' && recognised.table.name === 'characteristics') {
      characteristics.push(...(await addedCharacteristics(connector)));
    }
  }
  return loaded;
}

function tablesFirst(files: readonly InputFile[]): readonly InputFile[] {
  const isCharacteristics = (file: InputFile) => /characteristics/i.test(file.name);
  return [...files.filter(isCharacteristics), ...files.filter((file) => !isCharacteristics(file))];
}

async function addedCharacteristics(connector: Connector): Promise<readonly Characteristic[]> {
  const rows = await connector.query(
    'SELECT characteristic AS code, name, shape, never_negative FROM raw_characteristics',
  );
  return rows.map((row) => ({
    code: String(row.code ?? '').trim(),
    name: String(row.name ?? '').trim(),
    shape: row.shape === 'four_clock' ? 'four_clock' : 'single',
    neverNegative: row.never_negative === 'yes',
  }));
}

/** Holds overhauls whose hours contradict the order of their dates; the fewest that leave the rest in order. */
async function holdFallingHours(connector: Connector): Promise<void> {
  const rows = await connector.query(hoursByDateSql);
  const held: string[] = [];
  for (let start = 0, end = 0; start < rows.length; start = end) {
    while (end < rows.length && rows[end]?.unit === rows[start]?.unit) end++;
    const history = rows.slice(start, end);
    for (const index of hoursOutOfOrder(history.map((row) => Number(row.unit_hours))))
      held.push(String(history[index]?.id));
  }
  if (held.length > 0) await holdRows(connector, 'overhauls', fallingHoursSql(held));
}
