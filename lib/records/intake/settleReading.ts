import { type LengthUnit, lengthUnits, millimetresPer } from '../lengthUnits';
import { type QuestionList, questionId } from './Answers';
import type { CellOutcome } from './cellOutcome';
import type { ColumnMeaning } from './types';

/** Sizes in mm that a middle reading can have: outside, the unit of measure is another one. */
const plausible: Readonly<Record<string, readonly [number, number]>> = {
  thrust_play: [0.03, 3],
  runout: [0.001, 0.4],
  tip_compressor: [0.1, 6],
  tip_turbine: [0.1, 6],
};

function medianOf(outcomes: readonly CellOutcome[]): number | null {
  const values = outcomes
    .filter((one) => one.outcome === 'used' && one.uom === null)
    .map((one) => Math.abs(Number(one.value ?? one.upper)))
    .sort((a, b) => a - b);
  return values.length === 0 ? null : (values[values.length >> 1] as number);
}

/** Units of measure in which the columns' middle readings are of a possible size, all of them. */
export function possibleUnits(
  columns: readonly { readonly characteristic: string | null; readonly outcomes: readonly CellOutcome[] }[],
): readonly LengthUnit[] {
  return lengthUnits.filter((unit) =>
    columns.every(({ characteristic, outcomes }) => {
      const range = plausible[characteristic ?? ''];
      const median = medianOf(outcomes);
      if (range === undefined || median === null || median === 0) return true;
      const size_mm = median * millimetresPer[unit];
      return size_mm >= range[0] && size_mm <= range[1];
    }),
  );
}

/**
 * Unit of measure of the columns that state none: the one in which every column's middle reading is of a possible size,
 * or asked, once for the file.
 *
 * @returns the unit with how it was settled, or null while the answer waits
 */
export function settledUnit(
  file: string,
  columns: readonly {
    readonly meaning: ColumnMeaning;
    readonly characteristic: string | null;
    readonly outcomes: readonly CellOutcome[];
    readonly cells: number;
  }[],
  questions: QuestionList,
): { readonly uom: LengthUnit; readonly note: string } | null {
  const possible = possibleUnits(columns);
  const judged = columns.some(({ characteristic }) => (characteristic ?? '') in plausible);
  const only = possible[0];
  if (judged && possible.length === 1 && only !== undefined) {
    return { uom: only, note: `no unit of measure is stated; the sizes leave only ${only}` };
  }
  const names = columns.map(({ meaning }) => meaning.name);
  const answer = questions.ask({
    id: questionId('unit of measure', file, ''),
    file,
    column: names.join(', '),
    question: 'Which unit of measure do these readings have?',
    choices: lengthUnits,
    guess: possible.includes('mm') ? 'mm' : (only ?? ''),
    cellsWaiting: columns.reduce((sum, { cells }) => sum + cells, 0),
  });
  const uom = lengthUnits.find((unit) => unit === answer);
  return uom === undefined ? null : { uom, note: `unit of measure ${uom}, as answered` };
}

/** Turns the sides round where the sheet is seen from the turbine end: left and right change places, top and bottom do not. */
export function clockSeenFrom(
  clock: ColumnMeaning['clock'],
  end: 'compressor end' | 'turbine end',
): ColumnMeaning['clock'] {
  if (end === 'compressor end' || (clock !== '3' && clock !== '9')) return clock;
  return clock === '3' ? '9' : '3';
}

/** Asks once a file from which end left and right are seen; null while the answer waits. */
export function viewingEnd(
  file: string,
  column: string,
  cellsWaiting: number,
  questions: QuestionList,
): 'compressor end' | 'turbine end' | null {
  const choices = ['compressor end', 'turbine end'] as const;
  const answer = questions.ask({
    id: questionId('viewing end', file, ''),
    file,
    column,
    question:
      'Left and right: seen from which end? The right side seen from the compressor end is 3 o’clock.',
    choices,
    guess: 'compressor end',
    cellsWaiting,
  });
  return choices.find((choice) => choice === answer) ?? null;
}

/** Asks whether a column's readings are as found or as left where its header does not say; null while the answer waits. */
export function settledStage(
  file: string,
  meaning: ColumnMeaning,
  cellsWaiting: number,
  questions: QuestionList,
): 'found' | 'left' | null {
  if (meaning.stage !== null) return meaning.stage;
  const choices = ['as found (before stripping)', 'as left (after reassembly)'];
  const answer = questions.ask({
    id: questionId('stage', file, meaning.name),
    file,
    column: meaning.name,
    question: 'Were these readings taken as found or as left?',
    choices,
    guess: '',
    cellsWaiting,
  });
  return answer === null ? null : answer === choices[0] ? 'found' : 'left';
}
