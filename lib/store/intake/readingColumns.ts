import type { QuestionList } from '../../records/intake/Answers';
import type { CellOutcome } from '../../records/intake/cellOutcome';
import { unused, used } from '../../records/intake/cellOutcome';
import {
  agreedSign,
  cellsIn,
  type DistinctText,
  interpretLengths,
  interpretWords,
} from '../../records/intake/interpretColumn';
import { clockSeenFrom, settledStage, settledUnit, viewingEnd } from '../../records/intake/settleReading';
import type { ColumnMeaning } from '../../records/intake/types';
import { characteristicOfWord, clockOfWord, stageOfWord } from '../../records/intake/words/cellWords';
import { uomOfWord } from '../../records/intake/words/uomWords';
import { lengthUnits } from '../../records/lengthUnits';
import type { Connector } from '../Connector';
import { loadOutcomes, type TextsOf } from './outcomeTable';
import {
  longReadingsSql,
  type MeaningOf,
  ownRoleReasonsSql,
  waitingColumnSql,
  wideReadingsSql,
} from './sheetSql';
import type { ForeignSheet } from './translateSheet';

/** Reads every reading column of a sheet with one row an overhaul. */
export async function translateWideReadings(
  connector: Connector,
  file: string,
  meanings: readonly ColumnMeaning[],
  roles: MeaningOf,
  textsOf: TextsOf,
  questions: QuestionList,
): Promise<void> {
  const columns: { meaning: ColumnMeaning; texts: readonly DistinctText[] }[] = [];
  // One after another: a connection answers one question at a time.
  for (const meaning of meanings.filter(({ role }) => role === 'reading')) {
    columns.push({ meaning, texts: await textsOf(meaning.index) });
  }
  const ofOthers = agreedSign(columns.map(({ texts }) => texts.map(({ text }) => text)));
  const interpreted = columns.map(({ meaning, texts }) => ({
    meaning,
    texts,
    characteristic: meaning.characteristic,
    cells: cellsIn(texts),
    outcomes: interpretLengths({ file, meaning, texts, questions }, ofOthers),
  }));
  const open = interpreted
    .filter(({ meaning }) => isUnitOpen(meaning))
    .map((one) => ({ ...one, cells: cellsWithoutUnit(one.texts, one.outcomes) }))
    .filter(({ cells }) => cells > 0);
  const unit = open.length === 0 ? null : settledUnit(file, open, questions);
  const sides = interpreted.filter(({ meaning, cells }) => meaning.viewingEndOpen && cells > 0);
  const seenFrom =
    sides.length === 0
      ? 'compressor end'
      : viewingEnd(
          file,
          sides.map(({ meaning }) => meaning.name).join(', '),
          sides.reduce((sum, { cells }) => sum + cells, 0),
          questions,
        );
  for (const { meaning, cells, outcomes } of interpreted) {
    if (cells === 0) continue;
    const stage = settledStage(file, meaning, cells, questions);
    const uom = meaning.uom ?? (meaning.uomUnknown ? null : (unit?.uom ?? null));
    const clock = meaning.viewingEndOpen
      ? seenFrom === null
        ? null
        : clockSeenFrom(meaning.clock, seenFrom)
      : meaning.clock;
    const noted =
      isUnitOpen(meaning) && unit !== null ? outcomes.map((one) => withNote(one, unit.note)) : outcomes;
    await loadOutcomes(connector, meaning.index, noted);
    await connector.run(wideReadingsSql(file, roles, meaning, { stage, clock, uom }));
    if (stage === null) await connector.run(waitingColumnSql(file, meaning, 'stage', waitsForStage));
    else if (meaning.viewingEndOpen && seenFrom === null)
      await connector.run(waitingColumnSql(file, meaning, 'side', waitsForEnd));
    else if (meaning.uomUnknown) await connector.run(waitingColumnSql(file, meaning, 'uom', unknownUnit));
    else if (uom === null) await connector.run(waitingColumnSql(file, meaning, 'uom', waitsForUnit));
  }
}

/** Cells that can be read or wait and name no unit of measure of their own. */
function cellsWithoutUnit(texts: readonly DistinctText[], outcomes: readonly CellOutcome[]): number {
  return cellsIn(
    texts.filter((_, index) => {
      const one = outcomes[index];
      return one?.uom === null && (one.outcome === 'used' || one.outcome === 'waiting');
    }),
  );
}

/** Whether a column's unit of measure is neither stated nor stated wrongly. */
function isUnitOpen(meaning: ColumnMeaning): boolean {
  return meaning.uom === null && !meaning.uomUnknown;
}

const unknownUnit = `the header states a unit of measure that is not known; known are ${lengthUnits.join(', ')}`;

function withNote(outcome: CellOutcome, note: string): CellOutcome {
  return outcome.outcome !== 'used' || outcome.uom !== null
    ? outcome
    : { ...outcome, note: outcome.note ?? note };
}

/** Reads a sheet with one row a reading, or one row a characteristic with a column for each stage or clock position. */
export async function translateLongReadings(
  connector: Connector,
  sheet: ForeignSheet,
  meanings: readonly ColumnMeaning[],
  roles: MeaningOf,
  textsOf: TextsOf,
  questions: QuestionList,
): Promise<void> {
  const file = sheet.name;
  await interpretWord(
    connector,
    textsOf,
    roles.get('characteristic'),
    (text) => characteristicOfWord(text, sheet.characteristics)?.code ?? null,
    'a characteristic',
  );
  await interpretWord(connector, textsOf, roles.get('stage'), stageOfWord, 'as found or as left');
  await interpretWord(connector, textsOf, roles.get('uom'), uomOfWord, 'a unit of measure');
  await interpretClock(connector, file, roles.get('clock'), textsOf, questions);
  for (const role of ['lower', 'upper'] as const) {
    const meaning = roles.get(role);
    if (meaning === undefined) continue;
    const texts = await textsOf(meaning.index);
    await loadOutcomes(connector, meaning.index, interpretLengths({ file, meaning, texts, questions }, null));
  }
  for (const role of ['characteristic', 'stage', 'clock', 'uom', 'lower', 'upper'] as const) {
    const meaning = roles.get(role);
    if (meaning !== undefined) await connector.run(ownRoleReasonsSql(file, meaning));
  }
  for (const value of meanings.filter(({ role }) => role === 'value')) {
    await translateValues(connector, file, value, roles, textsOf, questions);
  }
}

async function translateValues(
  connector: Connector,
  file: string,
  value: ColumnMeaning,
  roles: MeaningOf,
  textsOf: TextsOf,
  questions: QuestionList,
): Promise<void> {
  const texts = await textsOf(value.index);
  const outcomes = interpretLengths({ file, meaning: value, texts, questions }, null);
  const cells = cellsIn(texts);
  const withoutUnit = cellsWithoutUnit(texts, outcomes);
  const statesUnit = !isUnitOpen(value) || roles.has('uom') || withoutUnit === 0;
  const unit = statesUnit
    ? null
    : settledUnit(
        file,
        [{ meaning: value, characteristic: value.characteristic, cells: withoutUnit, outcomes }],
        questions,
      );
  const stage = roles.has('stage') ? null : settledStage(file, value, cells, questions);
  const seenFrom = value.viewingEndOpen ? viewingEnd(file, value.name, cells, questions) : 'compressor end';
  const clock = seenFrom === null ? null : clockSeenFrom(value.clock, seenFrom);
  await loadOutcomes(connector, value.index, outcomes);
  const settled = { stage, clock, uom: value.uom ?? unit?.uom ?? null };
  await connector.run(longReadingsSql(file, roles, value, settled));
  if (seenFrom === null) await connector.run(waitingColumnSql(file, value, 'side', waitsForEnd));
  else if (stage === null && !roles.has('stage'))
    await connector.run(waitingColumnSql(file, value, 'stage', waitsForStage));
  else if (value.uomUnknown) await connector.run(waitingColumnSql(file, value, 'uom', unknownUnit));
  else if (!statesUnit && unit === null)
    await connector.run(waitingColumnSql(file, value, 'uom', waitsForUnit));
}

const waitsForEnd = 'waits for an answer: left and right seen from which end';
const waitsForStage = 'waits for an answer: as found or as left';
const waitsForUnit = 'waits for an answer: the unit of measure';

async function interpretWord(
  connector: Connector,
  textsOf: TextsOf,
  meaning: ColumnMeaning | undefined,
  wordOf: (text: string) => string | null,
  expected: string,
): Promise<void> {
  if (meaning === undefined) return;
  await loadOutcomes(
    connector,
    meaning.index,
    interpretWords(await textsOf(meaning.index), wordOf, expected),
  );
}

async function interpretClock(
  connector: Connector,
  file: string,
  meaning: ColumnMeaning | undefined,
  textsOf: TextsOf,
  questions: QuestionList,
): Promise<void> {
  if (meaning === undefined) return;
  const read = (await textsOf(meaning.index)).map((one) => ({
    ...one,
    word: clockOfWord(one.text),
  }));
  const open = read.filter(({ word }) => word?.viewingEndOpen === true);
  const seenFrom =
    open.length === 0 ? 'compressor end' : viewingEnd(file, meaning.name, cellsIn(open), questions);
  await loadOutcomes(
    connector,
    meaning.index,
    read.map(({ text, word }) => {
      if (word === null) return unused(text, 'held', 'not understood; expected: a clock position');
      if (word.viewingEndOpen && seenFrom === null) return unused(text, 'waiting', waitsForEnd);
      const clock =
        word.viewingEndOpen && seenFrom !== null ? clockSeenFrom(word.clock, seenFrom) : word.clock;
      return clock === null
        ? unused(text, 'held', 'not understood; expected: a clock position')
        : used(text, clock);
    }),
  );
}
