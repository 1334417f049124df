import type { LengthUnit } from '../lengthUnits';
import { type QuestionList, questionId } from './Answers';
import { type CellOutcome, unused, used } from './cellOutcome';
import type { CellReading, ColumnMeaning, DecimalSign } from './types';
import { dateOrder } from './values/dateOrder';
import { decimalSign, readsAlike } from './values/decimalSign';
import { lengthUnitOfCell } from './values/lengthUnitOfCell';
import { numberText } from './values/numberText';
import { readDate } from './values/readDate';
import { readHours } from './values/readHours';
import { readLength } from './values/readLength';

/** A distinct text of a column and how many cells hold it. */
export interface DistinctText {
  readonly text: string;
  readonly cells: number;
}

/** What is needed to interpret a column. */
export interface ColumnQuestion {
  readonly file: string;
  readonly meaning: ColumnMeaning;
  readonly texts: readonly DistinctText[];
  readonly questions: QuestionList;
}

/** Cells that hold the texts. */
export function cellsIn(texts: readonly Pick<DistinctText, 'cells'>[]): number {
  return texts.reduce((sum, { cells }) => sum + cells, 0);
}

/** Decimal sign on which all columns agree whose texts show one; columns that read alike either way say nothing. */
export function agreedSign(columns: readonly (readonly string[])[]): 'point' | 'comma' | null {
  const shown = columns.map((texts) => decimalSign(texts)).filter(({ evidence }) => evidence !== readsAlike);
  const [sign, second] = new Set(shown.map((one) => one.sign).filter((one) => one !== 'open'));
  return second === undefined ? (sign ?? null) : null;
}

/**
 * Decimal sign of a column: settled by its own values, else by the other columns of the file, else asked.
 *
 * @param ofOthers sign that every settled column of the file agrees on, or null
 */
export function settledSign(
  column: ColumnQuestion,
  expectsThousands: boolean,
  ofOthers: DecimalSign | null,
): 'point' | 'comma' | null {
  const { sign } = decimalSign(
    column.texts.map(({ text }) => text),
    { expectsThousands },
  );
  if (sign !== 'open') return sign;
  if (ofOthers === 'point' || ofOthers === 'comma') return ofOthers;
  const choices = ['decimal point', 'decimal comma'];
  const answer = column.questions.ask({
    id: questionId('decimal sign', column.file, column.meaning.name),
    file: column.file,
    column: column.meaning.name,
    question: `Which decimal sign do the numbers have? Examples: ${examples(column.texts)}.`,
    choices,
    guess: '',
    cellsWaiting: cellsIn(column.texts),
  });
  return answer === null ? null : answer === choices[0] ? 'point' : 'comma';
}

function examples(texts: readonly DistinctText[]): string {
  return texts
    .slice(0, 3)
    .map(({ text }) => `‘${text}’`)
    .join(', ');
}

/** Readings of a column in its own unit of measure; a unit written in a cell goes before the column's. */
export function interpretLengths(
  column: ColumnQuestion,
  ofOthers: DecimalSign | null,
): readonly CellOutcome[] {
  const stripped = column.texts.map(({ text }) => ({ text, inCell: lengthUnitOfCell(text) }));
  const bare = column.texts.map((one, index) => {
    const inCell = stripped[index]?.inCell;
    return {
      ...one,
      text: inCell !== null && inCell !== undefined && 'text' in inCell ? inCell.text : one.text,
    };
  });
  const sign = settledSign({ ...column, texts: bare }, false, ofOthers);
  return stripped.map(({ text, inCell }, index) => {
    if (inCell !== null && 'reason' in inCell) return unused(text, 'held', inCell.reason);
    if (sign === null) return unused(text, 'waiting', 'waits for an answer: decimal point or comma');
    return lengthOutcome(text, readLength(bare[index]?.text ?? text, sign), inCell?.uom ?? null);
  });
}

function lengthOutcome(text: string, reading: CellReading, uom: LengthUnit | null): CellOutcome {
  if (reading.kind === 'number') return { ...used(text, numberText(reading.value), reading.note), uom };
  if (reading.kind === 'interval') {
    const ends = { lower: numberText(reading.lower), upper: numberText(reading.upper) };
    return {
      text,
      outcome: 'used',
      value: null,
      ...ends,
      uom,
      note: reading.note ?? `read as an interval from ${ends.lower} to ${ends.upper}`,
    };
  }
  if (reading.kind === 'none')
    return unused(text, 'none', reading.word === null ? null : `no reading: ‘${reading.word}’`);
  return unused(text, 'held', reading.reason);
}

/** Hours of a column, in h. */
export function interpretHours(column: ColumnQuestion, ofOthers: DecimalSign | null): readonly CellOutcome[] {
  const sign = settledSign(column, true, ofOthers);
  return column.texts.map(({ text }) => {
    if (sign === null) return unused(text, 'waiting', 'waits for an answer: decimal point or comma');
    const reading = readHours(text, sign);
    if (reading.kind === 'number') return used(text, numberText(reading.value), reading.note);
    if (reading.kind === 'none') return unused(text, 'none', null);
    return unused(
      text,
      'held',
      reading.kind === 'held' ? reading.reason : 'an interval is no reading of hours',
    );
  });
}

/** Days of a column as ISO dates; the order is settled by the whole column or asked, spreadsheet serials are asked. */
export function interpretDates(column: ColumnQuestion): readonly CellOutcome[] {
  const { file, meaning, texts, questions } = column;
  const found = dateOrder(texts.map(({ text }) => text));
  const choices = ['day first', 'month first', 'year first'] as const;
  const answered =
    found.order === 'open'
      ? questions.ask({
          id: questionId('date order', file, meaning.name),
          file,
          column: meaning.name,
          question: `In which order are the dates written? Examples: ${examples(texts)}.`,
          choices,
          guess: '',
          cellsWaiting: cellsIn(texts),
        })
      : found.order;
  const order = choices.find((choice) => choice === answered);
  if (found.order !== 'open') questions.remark(file, `Dates: ${found.evidence}`);
  if (order === undefined)
    return texts.map(({ text }) =>
      unused(text, 'waiting', 'waits for an answer: the order of day and month'),
    );
  return texts.map(({ text, cells }) => {
    const reading = readDate(text, order);
    if (reading.kind === 'date') return used(text, reading.iso, reading.note);
    if (reading.kind === 'none') return unused(text, 'none', null);
    if (reading.kind === 'held') return unused(text, 'held', reading.reason);
    const answer = questions.ask({
      id: questionId('dates', file, meaning.name, text),
      file,
      column: meaning.name,
      question: `Is ‘${text}’ the day ${reading.iso}? ${reading.reason}`,
      choices: ['yes', 'no'],
      guess: 'yes',
      cellsWaiting: cells,
    });
    if (answer === 'yes') return used(text, reading.iso, `confirmed as ${reading.iso}`);
    return answer === 'no'
      ? unused(text, 'held', 'not a date, as answered')
      : unused(text, 'waiting', `waits for an answer: is it ${reading.iso}?`);
  });
}

/** Words of a column as words of the schema, by the given dictionary. */
export function interpretWords(
  texts: readonly DistinctText[],
  wordOf: (text: string) => string | null,
  expected: string,
): readonly CellOutcome[] {
  return texts.map(({ text }) => {
    const word = wordOf(text);
    return word === null ? unused(text, 'held', `not understood; expected: ${expected}`) : used(text, word);
  });
}
