import { describe, expect, test } from 'vitest';
import { initialState } from '../../app/engine/engineState';
import { byFile, likelierGroups } from '../../app/records/questionGroups';
import { columnWords, surenessWords } from '../../app/words/columnWords';
import { chosenSentence, kindWords, questionPlace, waitingSentence } from '../../app/words/questionWords';
import { recordsSentence } from '../../app/words/recordsSentence';
import type { ColumnMeaning } from '../../lib/analysis/types';
import { questionId } from '../../lib/records/intake/Answers';
import { characteristics, fleet, question } from './fixture';

const unitOf = (file: string, guess = 'mm') =>
  question({ id: questionId('unit of measure', file, ''), file, guess });
const stageOf = (file: string, column: string) =>
  question({
    id: questionId('stage', file, column),
    file,
    column,
    choices: ['found', 'left'],
    guess: '',
    cellsWaiting: 5,
  });

describe('waitingSentence', () => {
  test('counts questions and cells', () => {
    expect(waitingSentence([])).toBeNull();
    expect(waitingSentence([question({ cellsWaiting: 1 })])).toBe(
      '1 question waits: 1 cell is held until it is answered.',
    );
    expect(waitingSentence([unitOf('a.csv'), unitOf('b.csv'), stageOf('c.csv', 'x')])).toBe(
      '3 questions wait: 29 cells are held until they are answered.',
    );
  });

  test('says ‘up to’ where a cell can wait for two questions', () => {
    expect(waitingSentence([unitOf('a.csv'), stageOf('a.csv', 'x')])).toContain('up to 17 cells are held');
    expect(waitingSentence([stageOf('a.csv', 'x'), stageOf('a.csv', 'y')])).toContain(': 10 cells are held');
  });

  test('the Records page says whose questions wait', () => {
    const files = { files: [], problems: [], problemsFound: 0, sheets: [], questions: [unitOf('a.csv')] };
    const waiting = '1 question waits: 12 cells are held until it is answered.';
    const open = { ...initialState, work: null, fleet: fleet({ questions: files.questions }) };
    expect(recordsSentence(open)).toMatch(new RegExp(`held\\. ${waiting}$`));
    expect(recordsSentence({ ...initialState, work: null, attempt: files })).toBe(
      `Nothing is open. About the files that could not be used, ${waiting}`,
    );
    expect(recordsSentence({ ...open, fleet: fleet() })).not.toContain('question');
  });
});

test('a question says where it comes from, and what it is about', () => {
  expect(questionPlace(question())).toBe('Column ‘Axial play’: 12 cells wait.');
  expect(questionPlace(question({ column: '', cellsWaiting: 1 }))).toBe('The whole file: 1 cell waits.');
  expect(kindWords('unit of measure')).toBe('the unit of measure');
  expect(chosenSentence(0, 3)).toBe('No answer is chosen: nothing would change.');
  expect(chosenSentence(1, 3)).toBe('1 of 3 questions has an answer that is not applied yet.');
  expect(chosenSentence(2, 3)).toBe('2 of 3 questions have an answer that is not applied yet.');
});

describe('groups of questions', () => {
  test('by file, in order of first appearance', () => {
    const asked = [unitOf('b.csv'), unitOf('a.csv'), stageOf('b.csv', 'x')];
    expect(byFile(asked).map(({ file, questions }) => [file, questions.length])).toEqual([
      ['b.csv', 2],
      ['a.csv', 1],
    ]);
  });

  test('alike are those of one kind and one likelier choice; without one, or alone, they are no group', () => {
    const asked = [
      unitOf('a.csv'),
      unitOf('b.csv'),
      unitOf('c.csv', 'in'),
      unitOf('d.csv', 'furlong'),
      unitOf('e.csv', 'furlong'),
      stageOf('a.csv', 'x'),
      stageOf('a.csv', 'y'),
    ];
    expect(likelierGroups(asked)).toEqual([
      { kind: 'unit of measure', guess: 'mm', questions: asked.slice(0, 2) },
    ]);
  });
});

describe('columns in words', () => {
  const meaning = (changes: Partial<ColumnMeaning>): ColumnMeaning => ({
    index: 0,
    name: 'x',
    role: 'reading',
    characteristic: 'thrust_play',
    stage: 'found',
    clock: null,
    viewingEndOpen: false,
    uomUnknown: false,
    uom: 'mm',
    evidence: 'header',
    sureness: 1,
    ...changes,
  });
  const words = (changes: Partial<ColumnMeaning>) => columnWords(meaning(changes), characteristics);

  test('a reading: characteristic, stage, position, unit of measure', () => {
    expect(words({})).toBe('thrust play, as found, mm');
    expect(words({ characteristic: 'tip_compressor', stage: 'left', clock: '3', uom: 'um' })).toBe(
      'tip clearance, compressor, as left, 3 o’clock, µm',
    );
    expect(words({ clock: '9', viewingEndOpen: true })).toContain(
      '9 o’clock if seen from the compressor end',
    );
    expect(words({ characteristic: 'seal_gap', stage: null, uom: null })).toBe(
      'seal gap, as found or as left not in the header, unit of measure not in the header',
    );
  });

  test('other roles are plain words', () => {
    const bare = { characteristic: null, stage: null, uom: null } as const;
    expect(words({ ...bare, role: 'date' })).toBe('date');
    expect(words({ ...bare, role: 'unused' })).toBe('not used');
    expect(words({ ...bare, role: 'value', uom: '0.01mm' })).toBe('value of the reading, 0.01\u00a0mm');
  });

  test('how sure: certain from 0.9, likely from 0.6', () => {
    expect([1, 0.9, 0.899, 0.6, 0.599, 0].map(surenessWords)).toEqual([
      'certain',
      'certain',
      'likely',
      'likely',
      'a guess',
      'a guess',
    ]);
  });
});
