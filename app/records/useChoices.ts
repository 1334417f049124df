'use client';

import { useMemo, useState } from 'react';
import type { Question } from '../../lib/analysis/types';
import type { AnswerDecision } from '../../lib/records/decisions/Decision';

/** Choices by the id of their question; a question without one is left for later. */
export type Choices = ReadonlyMap<string, string>;

interface Choosing {
  readonly choices: Choices;
  /** The chosen answers, in order of their questions. */
  readonly answers: readonly AnswerDecision[];
  /** Chooses an answer for each of the questions; null leaves it for later. */
  readonly choose: (about: readonly Question[], choice: string | null) => void;
}

const none: Choices = new Map();

/** What is chosen for the questions and not applied yet; questions asked anew start without a choice. */
export function useChoices(questions: readonly Question[]): Choosing {
  const [made, setMade] = useState({ questions, choices: none });
  const choices = made.questions === questions ? made.choices : none;
  const answers = useMemo(
    () =>
      questions.flatMap(({ id, file, column, question }) => {
        const answer = choices.get(id);
        return answer === undefined ? [] : [{ kind: 'answer' as const, id, file, column, question, answer }];
      }),
    [questions, choices],
  );
  const choose = (about: readonly Question[], choice: string | null) => {
    const next = new Map(choices);
    for (const { id } of about) {
      if (choice === null) next.delete(id);
      else next.set(id, choice);
    }
    setMade({ questions, choices: next });
  };
  return { choices, answers, choose };
}
