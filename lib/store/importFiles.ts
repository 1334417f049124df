import { canonicalTables } from '../records/canonicalTables';
import { builtInCharacteristics, type Characteristic } from '../records/characteristics';
import type { Decision } from '../records/decisions/Decision';
import { editedTables } from '../records/decisions/editedTables';
import { type RulingOutcome, rulingsOf } from '../records/decisions/rulings';
import { tableEditsOf } from '../records/decisions/tableEdits';
import { hoursOutOfOrder } from '../records/hoursInOrder';
import type { ImportedFile, InputFile, Problem } from '../records/importReport';
import { type Answers, noAnswers, QuestionList } from '../records/intake/Answers';
import type { SheetColumns } from '../records/intake/SheetColumns';
import type { Question } from '../records/intake/types';
import type { Connector } from './Connector';
import { holdRows } from './holdRows';
import { everyProblem, importReport } from './importReport';
import { withHeldRowsInWords } from './intake/heldRowsInWords';
import { askAboutJobsDatedTwice } from './intake/jobsDatedTwice';
import { askAboutRunStarts } from './intake/meters/runStarts';
import { settleUnitHours } from './intake/meters/settleUnitHours';
import { askAboutReadings } from './intake/readingDoubts';
import { askAboutScale } from './intake/scaleSlips';
import { ownReasonsSql } from './intake/sheetSql';
import { understandFile } from './intake/understandFile';
import type { LoadedFile } from './loadFile';
import { PlainFiles } from './PlainFiles';
import { placeReadings } from './placeReadings';
import { listHeldLines } from './rulings/heldLines';
import { holdLeftOut } from './rulings/leaveOut';
import { loadRulings } from './rulings/loadRulings';
import { settleRulings } from './rulings/settleRulings';
import { allCharacteristicsSql } from './sql/characteristics';
import { checkedReadingsSql } from './sql/checkedReadings';
import { incompleteClockSetsSql, makeClockSetsSql, settleClockSetsSql } from './sql/clockSeries';
import { doubtfulReadingsSql } from './sql/doubtfulReadings';
import { readingsInMillimetresSql, readingsOfUnknownRunSql, settleRunsSql } from './sql/placedReadings';
import { createRecordTablesSql } from './sql/recordTables';
import { repeatedKeysSql, repeatedRowIsDoubt, repeatedRowsSql } from './sql/repeatedRows';
import { resetRulesSql, runsSql } from './sql/runs';
import { fallingHistoriesSql, fallingHoursSql } from './sql/unitHours';
import { addUnitsFromOverhaulsSql, overhaulsOfUnknownUnitSql } from './sql/units';
import { tableOfHead } from './tableOfHead';
import { applyTableEdits } from './tables/applyTableEdits';
import { typeReadings } from './typeReadings';
import { typeTable } from './typeTable';

/** What an import came to; the records themselves are in the store. */
export interface ImportedData {
  readonly files: readonly ImportedFile[];
  readonly problems: readonly Problem[];
  /** All problems, those beyond the listed ones included. */
  readonly problemsFound: number;
  readonly readingsUsed: number;
  /** What could not be known; the cells that wait for it are among the problems. */
  readonly questions: readonly Question[];
  /** How the columns of each workshop's sheet were understood, or why not. */
  readonly sheets: ReadonlyMap<string, SheetColumns>;
  /** What came of every ruling about held rows. */
  readonly rulings: readonly RulingOutcome[];
}

/** So many rows are packed before tables are made of them: those of 2,000,000 readings took 290 MB, and take 15. */
const manyRows = 1_000_000;

/** Called between the steps of an import; throws to stop it. */
export type OnStep = (step: string, share: number) => Promise<void>;

/** Choices of an import. */
export interface ImportOptions {
  /** Answers to earlier questions. */
  readonly answers?: Answers;
  /** What a person decided about these files besides answers: meanings of columns, rulings on held rows, edited rows. */
  readonly decisions?: readonly Decision[];
  /** How many problems are listed at the most; all if not given. */
  readonly problemsListed?: number;
}

/**
 * Takes files into the store: recognises each, reads every cell as text, converts and checks in SQL, derives unit hours,
 * and cuts series and runs. What cannot be used is held with its reason, what cannot be known is asked; nothing is fatal
 * but an error of the engine.
 */
export async function importFiles(
  connector: Connector,
  files: readonly InputFile[],
  onStep: OnStep,
  { answers = noAnswers, decisions = [], problemsListed = everyProblem }: ImportOptions = {},
): Promise<ImportedData> {
  await connector.run(createRecordTablesSql());
  const given = rulingsOf(decisions);
  await loadRulings(connector, given);
  const leavesOut = given.some(({ ruling }) => ruling === 'leave out');
  const questions = new QuestionList(answers);
  const sheets = new Map<string, SheetColumns>();
  const loaded = await loadAll(connector, files, questions, decisions, sheets, onStep);
  for (const [place, table] of canonicalTables.entries()) {
    await onStep('Checking every cell', 0.5 + (0.1 * place) / canonicalTables.length);
    if (table.name === 'readings') await typeReadings(connector);
    else await typeTable(connector, table);
    if (leavesOut) await holdLeftOut(connector, table);
    if ((await connector.change(repeatedKeysSql(table))) > 0)
      await holdRows(connector, table.name, repeatedRowsSql(table), repeatedRowIsDoubt(table));
  }
  if (loaded.reduce((rows, { rowsIn }) => rows + rowsIn, 0) >= manyRows) {
    await onStep('Packing what was read', 0.59);
    await connector.pack();
  }
  await onStep('Placing overhauls and readings', 0.6);
  await connector.run(allCharacteristicsSql);
  await holdRows(connector, 'overhauls', overhaulsOfUnknownUnitSql, 'true');
  await settleUnitHours(connector, questions);
  await holdFallingHours(connector);
  await connector.run(addUnitsFromOverhaulsSql);
  await onStep('Placing overhauls and readings', 0.65);
  await holdRows(connector, 'readings', doubtfulReadingsSql);
  await onStep('Comparing readings', 0.7);
  await askAboutScale(connector, sheets.keys(), questions);
  // Only what these questions hold can bring further readings into doubt.
  if (await askAboutJobsDatedTwice(connector, sheets.keys(), questions))
    await holdRows(connector, 'readings', doubtfulReadingsSql);
  await connector.run(resetRulesSql);
  await askAboutReadings(connector, sheets.keys(), questions, (share) =>
    onStep('Comparing readings', 0.72 + 0.13 * share),
  );
  await onStep('Cutting series and runs', 0.85);
  await connector.run(readingsInMillimetresSql);
  await connector.run(makeClockSetsSql);
  await holdRows(connector, 'readings', incompleteClockSetsSql);
  await connector.run(settleClockSetsSql);
  await onStep('Cutting series and runs', 0.88);
  await connector.run(runsSql);
  await placeReadings(connector, (share) => onStep('Cutting series and runs', 0.9 + 0.07 * share));
  await askAboutRunStarts(connector, questions);
  await holdRows(connector, 'readings', readingsOfUnknownRunSql);
  await connector.run(settleRunsSql);
  await onStep('Counting what was read', 0.97);
  const reported = await withHeldRowsInWords(connector, loaded, new Set(sheets.keys()));
  await connector.run(ownReasonsSql);
  const rulings = await settleRulings(
    connector,
    files.map((file) => file.name),
  );
  return {
    ...(await importReport(connector, reported, problemsListed)),
    questions: questions.questions,
    sheets,
    rulings,
  };
}

/** Loads every file; tables that add characteristics come first, since sheets may use them. */
async function loadAll(
  connector: Connector,
  files: readonly InputFile[],
  questions: QuestionList,
  decisions: readonly Decision[],
  sheets: Map<string, SheetColumns>,
  onStep: OnStep,
): Promise<readonly LoadedFile[]> {
  const characteristics = [...builtInCharacteristics];
  const loaded: LoadedFile[] = [];
  const edits = tableEditsOf(decisions);
  const plainFiles = new PlainFiles(connector);
  const load = async (file: InputFile) => {
    const onPiece = (share: number) =>
      onStep(`Reading ${file.name}`, (0.5 * (loaded.length + share)) / files.length);
    await onPiece(0);
    const understood = await understandFile(
      connector,
      file,
      characteristics,
      questions,
      plainFiles,
      decisions,
      onPiece,
    );
    await listHeldLines(connector, understood);
    loaded.push(understood);
    if ('sheet' in understood) sheets.set(file.name, understood.sheet);
  };
  const ofCharacteristics = files.filter((file) => tableOfHead(file) === 'characteristics');
  for (const file of ofCharacteristics) await load(file);
  await plainFiles.read();
  await applyTableEdits(connector, 'characteristics', edits);
  characteristics.push(...(await addedCharacteristics(connector)));
  const codes = characteristics.map(({ code }) => code);
  const names = files.map(({ name }) => name);
  await connector.run(checkedReadingsSql(codes, names));
  for (const file of files) if (!ofCharacteristics.includes(file)) await load(file);
  await plainFiles.read();
  for (const table of editedTables)
    if (table !== 'characteristics') await applyTableEdits(connector, table, edits);
  return loaded;
}

async function addedCharacteristics(connector: Connector): Promise<readonly Characteristic[]> {
  const rows = await connector.query(
    'SELECT trim(characteristic) AS code, name, shape, never_negative FROM raw_characteristics',
  );
  return rows.map((row) => ({
    code: String(row.code ?? ''),
    name: String(row.name ?? '').trim(),
    shape: row.shape === 'four_clock' ? 'four_clock' : 'single',
    neverNegative: row.never_negative === 'yes',
  }));
}

/** Holds overhauls whose hours contradict the order of their dates; the fewest that leave the rest in order. */
async function holdFallingHours(connector: Connector): Promise<void> {
  const rows = await connector.query(fallingHistoriesSql);
  const held: string[] = [];
  for (let start = 0, end = 0; start < rows.length; start = end) {
    while (end < rows.length && rows[end]?.unit === rows[start]?.unit) end++;
    const history = rows.slice(start, end);
    for (const index of hoursOutOfOrder(history.map((row) => Number(row.unit_hours))))
      held.push(String(history[index]?.id));
  }
  if (held.length > 0) await holdRows(connector, 'overhauls', fallingHoursSql(held), 'true');
}
