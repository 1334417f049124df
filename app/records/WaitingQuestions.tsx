import Link from 'next/link';
import type { Question } from '../../lib/analysis/types';
import { counted } from '../words/counted';

/** A line for other pages where questions about the user's files wait. */
export function WaitingQuestions({ questions }: { readonly questions: readonly Question[] }) {
  if (questions.length === 0) return null;
  return (
    <p>
      {counted(questions.length, 'question')} about your files {questions.length === 1 ? 'waits' : 'wait'} on{' '}
      <Link href="/records/#questions">the Records page</Link>.
    </p>
  );
}
