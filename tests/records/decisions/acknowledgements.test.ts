import { expect, test } from 'vitest';
import {
  acknowledgement,
  acknowledgementsOf,
  isAbout,
} from '../../../lib/records/decisions/acknowledgements';
import { type AnswerDecision, journalEntrySchema } from '../../../lib/records/decisions/Decision';
import {
  answersOf,
  decisionsInForce,
  meaningsOf,
  withDecisions,
  withTakenBack,
} from '../../../lib/records/decisions/journal';
import { rulingsOf } from '../../../lib/records/decisions/rulings';
import { savedDecisions } from '../../../lib/records/decisions/savedDecisions';

const signature = { at: '2026-03-01T08:00:00.000Z', by: 'AB' };
const answer: AnswerDecision = {
  kind: 'answer',
  id: 'q1',
  file: 'a.csv',
  column: 'play',
  question: 'Which unit?',
  answer: 'mm',
};
const about = { unit: 'H-2005', series: 'runout', upTo: '2024-11-03', remark: 'shaft to be checked' };
const own = acknowledgement({ source: 'own', ...about });
const demo = acknowledgement({ source: 'demo', ...about });

test('the same series of the demo fleet and of own files are acknowledged apart', () => {
  const inForce = decisionsInForce(withDecisions([], [own, demo], signature));
  expect(inForce).toHaveLength(2);
  expect(acknowledgementsOf(inForce, 'own')).toEqual([own]);
  expect(acknowledgementsOf(inForce, 'demo')).toEqual([demo]);
  expect([own, demo, answer].map((one) => isAbout(one, 'own'))).toEqual([true, false, true]);
  expect([own, demo, answer].map((one) => isAbout(one, 'demo'))).toEqual([false, true, false]);
});

test('a later one about the same series takes the place of the earlier, and the journal keeps both', () => {
  const first = withDecisions([], [own], signature);
  const later = acknowledgement({ source: 'own', ...about, upTo: '2026-07-19', remark: 'shaft changed' });
  const journal = withDecisions(first, [later], signature);
  expect(acknowledgementsOf(decisionsInForce(journal), 'own')).toEqual([later]);
  expect(journal[1]?.before).toEqual(own);
  expect(decisionsInForce(withTakenBack(journal, [later.id], signature))).toEqual([]);
});

test('what reads files passes acknowledgements over', () => {
  const inForce = decisionsInForce(withDecisions([], [answer, own, demo], signature));
  expect(meaningsOf(inForce)).toEqual([]);
  expect(rulingsOf(inForce)).toEqual([]);
  const asked = {
    file: 'a.csv',
    column: '',
    question: '',
    choices: [],
    guess: '',
    cellsWaiting: 0,
    guessFrom: '',
  };
  const answers = answersOf(inForce);
  expect(answers({ ...asked, id: 'q1' })).toBe('mm');
  expect(answers({ ...asked, id: own.id })).toBeUndefined();
  expect(savedDecisions(inForce, [])).toBe(savedDecisions([answer], []));
});

test('a journal with acknowledgements passes the check of a workspace file', () => {
  const journal = withTakenBack(withDecisions([], [demo], signature), [demo.id], signature);
  expect(journal.map((entry) => journalEntrySchema.parse(JSON.parse(JSON.stringify(entry))))).toEqual(
    journal,
  );
});
