import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AnswerDecision, Decision } from '../../../lib/records/decisions/Decision';
import { answersOf } from '../../../lib/records/decisions/journal';
import { meaningDecision } from '../../../lib/records/decisions/meaningDecision';
import {
  readSavedDecisions,
  savedDecisions,
  UnreadableDecisions,
} from '../../../lib/records/decisions/savedDecisions';
import { questionId } from '../../../lib/records/intake/Answers';
import { sheetShape } from '../../../lib/records/intake/sheetShape';
import type { Question } from '../../../lib/records/intake/types';
import { question } from '../../app/fixture';

const names = ['Läufer', 'Tag', 'A'];
const shape = sheetShape(names);
const sheet = { file: 'a.csv', shape, names };
const unit = meaningDecision({
  file: 'a.csv',
  shape,
  index: 0,
  column: 'Läufer',
  role: 'unit',
  characteristic: null,
  stage: null,
  clock: null,
  uom: null,
});
const reading = meaningDecision({
  ...unit,
  index: 2,
  column: 'A',
  role: 'reading',
  characteristic: 'tip_turbine',
  stage: 'left',
  clock: '9',
  uom: '0.01mm',
});
const answer: AnswerDecision = {
  kind: 'answer',
  id: questionId('date order', 'a.csv', 'Tag'),
  file: 'a.csv',
  column: 'Tag',
  question: 'In which order?',
  answer: 'day first',
};
const text = savedDecisions([unit, answer, reading], [sheet]);

describe('saved decisions', () => {
  test('are readable and say for which columns they are', () => {
    const saved = JSON.parse(text);
    expect(saved.version).toBe(1);
    expect(saved.sheets).toEqual([expect.objectContaining({ file: 'a.csv', shape, columns: names })]);
    expect(saved.sheets[0].meanings[1]).toEqual({
      place: 3,
      column: 'A',
      read_as: 'reading',
      characteristic: 'tip_turbine',
      stage: 'left',
      clock: '9',
      unit_of_measure: '0.01mm',
    });
  });

  test('come back equal, answers with the shape of their sheet', () => {
    const anyText = fc.string({ unit: 'grapheme', maxLength: 12 });
    const meaning = fc
      .record({
        file: anyText,
        index: fc.nat(4095),
        column: anyText,
        role: anyText,
        characteristic: fc.option(anyText),
        stage: fc.constantFrom('found' as const, 'left' as const, null),
        clock: fc.constantFrom('12' as const, '3' as const, null),
        uom: fc.option(anyText),
      })
      .map((about) => meaningDecision({ ...about, shape }));
    const given = fc
      .record({
        id: fc.string({ minLength: 1 }),
        file: anyText,
        column: anyText,
        question: anyText,
        answer: anyText,
      })
      .map((about): Decision => ({ kind: 'answer', ...about, shape }));
    fc.assert(
      fc.property(fc.array(fc.oneof(meaning, given), { maxLength: 12 }), (decisions) => {
        const back = readSavedDecisions(savedDecisions(decisions, [sheet]));
        const inOrder = (list: readonly Decision[]) =>
          list.map((one) => JSON.stringify(sortedKeys(one))).sort();
        expect(inOrder(back)).toEqual(inOrder(decisions));
      }),
    );
  });

  test('leave rulings out', () => {
    const ruling: Decision = {
      kind: 'ruling',
      id: 'r',
      file: 'a.csv',
      line: 3,
      column: '',
      raw: '',
      ruling: 'leave out',
      text: null,
      reason: 'blot',
      by: '',
    };
    expect(readSavedDecisions(savedDecisions([ruling, unit], [sheet]))).toEqual([unit]);
  });

  const changed = (change: (saved: { version: unknown; sheets: Record<string, unknown>[] }) => void) => {
    const saved = JSON.parse(text);
    change(saved);
    return JSON.stringify(saved);
  };
  test.each([
    ['cut off', text.slice(0, -9), 'not in JSON, or it is cut off'],
    ['a sheet', 'unit;date\nA;2020-01-01\n', 'not in JSON'],
    ['empty', '', 'not in JSON'],
    ['another form', '{"name":"x","version":1}', 'it does not say "form"'],
    ['a bare null', 'null', 'it does not say "form"'],
    [
      'a later version',
      changed((saved) => Object.assign(saved, { version: 2 })),
      'is of version 2; version 1 can be read',
    ],
    [
      'a place that is none',
      changed((saved) =>
        Object.assign((saved.sheets[0]?.meanings as object[] | undefined)?.[1] ?? {}, { place: 0 }),
      ),
      'damaged at sheets 1 meanings 2 place',
    ],
    [
      'a name changed',
      changed((saved) => Object.assign(saved.sheets[0] ?? {}, { columns: ['x'] })),
      'do not agree',
    ],
    [
      'no answers',
      changed((saved) => Reflect.deleteProperty(saved.sheets[0] ?? {}, 'answers')),
      'sheets 1 answers',
    ],
    [
      'no shape',
      changed((saved) => Object.assign(saved.sheets[0] ?? {}, { shape: null, columns: null })),
      'have no shape',
    ],
  ])('are refused with the reason: %s', (_, given, reason) => {
    expect(() => readSavedDecisions(given)).toThrow(UnreadableDecisions);
    expect(() => readSavedDecisions(given)).toThrow(reason);
  });
});

describe('answers from a saved file', () => {
  const asked = (kind: Parameters<typeof questionId>[0], file: string, column: string): Question =>
    question({ id: questionId(kind, file, column), file, column });
  const answers = answersOf(readSavedDecisions(text));

  test('hold for files of the same shape, of any name, where kind and column agree', () => {
    expect(answers(asked('date order', 'b.csv', 'Tag'), shape)).toBe('day first');
    expect(answers(asked('date order', 'a.csv', 'Tag'), shape)).toBe('day first');
    expect(answers(asked('date order', 'b.csv', 'Tag'), 'other')).toBeUndefined();
    expect(answers(asked('date order', 'b.csv', 'Tag'))).toBeUndefined();
    expect(answers(asked('date order', 'b.csv', 'Datum'), shape)).toBeUndefined();
    expect(answers(asked('decimal sign', 'b.csv', 'Tag'), shape)).toBeUndefined();
  });

  test('of a file of the same name and another shape do not hold', () => {
    expect(answers(asked('date order', 'a.csv', 'Tag'), 'other')).toBeUndefined();
  });

  test('about cells of one file say nothing about others', () => {
    const scale = { ...answer, id: questionId('scale', 'a.csv', 'A', 'runout times 10'), shape };
    const other = question({ id: questionId('scale', 'b.csv', 'A', 'runout times 10'), file: 'b.csv' });
    expect(answersOf([scale])(other, shape)).toBeUndefined();
    expect(answersOf([scale])({ ...other, id: scale.id, file: 'a.csv' }, shape)).toBe('day first');
  });

  test('that contradict each other leave other files to be asked', () => {
    const second = {
      ...answer,
      id: questionId('date order', 'c.csv', 'Tag'),
      file: 'c.csv',
      answer: 'month first',
    };
    const both = answersOf([
      { ...answer, shape },
      { ...second, shape },
    ]);
    expect(both(asked('date order', 'b.csv', 'Tag'), shape)).toBeUndefined();
    expect(both(asked('date order', 'c.csv', 'Tag'), shape)).toBe('month first');
  });
});

function sortedKeys(decision: Decision): object {
  return Object.fromEntries(Object.entries(decision).sort(([a], [b]) => (a < b ? -1 : 1)));
}
