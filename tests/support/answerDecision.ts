import type { AnswerDecision } from '../../lib/records/decisions/Decision';

/** An answer to a question about the unit of measure of a column. */
export const answerDecision = (id: string, text: string): AnswerDecision => ({
  kind: 'answer',
  id,
  file: 'a.csv',
  column: 'play',
  question: 'Which unit?',
  answer: text,
});
