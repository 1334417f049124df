import { describe, expect, test } from 'vitest';
import {
  answersOf,
  decisionsInForce,
  withDecisions,
  withTakenBack,
} from '../../../lib/records/decisions/journal';
import { answerDecision as answer } from '../../support/answerDecision';

const signature = { at: '2026-03-01T08:00:00.000Z', by: 'AB' };

describe('journal of decisions', () => {
  test('the latest decision about a thing holds and knows what held before', () => {
    const first = withDecisions([], [answer('q1', 'mm'), answer('q2', 'um')], signature);
    const second = withDecisions(first, [answer('q1', 'in')], signature);
    expect(second.map(({ number, act }) => [number, act])).toEqual([
      [1, 'decided'],
      [2, 'decided'],
      [3, 'decided'],
    ]);
    expect(second[2]?.before).toEqual(answer('q1', 'mm'));
    expect(decisionsInForce(second)).toEqual([answer('q1', 'in'), answer('q2', 'um')]);
  });

  test('a decision taken back holds no longer, and the journal still tells of it', () => {
    const journal = withTakenBack(
      withDecisions([], [answer('q1', 'mm')], signature),
      ['q1', 'never asked'],
      signature,
    );
    expect(decisionsInForce(journal)).toEqual([]);
    expect(journal.map(({ act, by }) => [act, by])).toEqual([
      ['decided', 'AB'],
      ['taken back', 'AB'],
    ]);
  });

  test('deciding the same again writes nothing', () => {
    const journal = withDecisions([], [answer('q1', 'mm')], signature);
    expect(withDecisions(journal, [answer('q1', 'mm')], signature)).toEqual(journal);
  });

  test('answers are found by the id of their question', () => {
    const answers = answersOf([answer('q1', 'mm')]);
    const question = {
      id: 'q1',
      file: '',
      column: '',
      question: '',
      choices: [],
      guess: '',
      cellsWaiting: 0,
    };
    expect(answers(question)).toBe('mm');
    expect(answers({ ...question, id: 'q2' })).toBeUndefined();
  });
});
