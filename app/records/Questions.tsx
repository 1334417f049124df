'use client';

import { useRef, useState } from 'react';
import type { Question } from '../../lib/analysis/types';
import type { AnswerDecision } from '../../lib/records/decisions/Decision';
import { usePrinting } from '../frame/usePrinting';
import { counted } from '../words/counted';
import { chosenSentence, waitingSentence } from '../words/questionWords';
import { LikelierButtons } from './LikelierButtons';
import { QuestionField } from './QuestionField';
import { QuestionPager, questionsPerPage } from './QuestionPager';
import { byFile } from './questionGroups';
import { useChoices } from './useChoices';

interface QuestionsProps {
  readonly questions: readonly Question[];
  readonly busy: boolean;
  readonly onApply: (answers: readonly AnswerDecision[]) => void;
}

/** The open questions by file, at most 30 at a time; what is chosen is sent at once, and nothing else is. */
export function Questions({ questions, busy, onApply }: QuestionsProps) {
  const { choices, answers, choose } = useChoices(questions);
  const [asked, setAsked] = useState(1);
  const heading = useRef<HTMLHeadingElement>(null);
  const printing = usePrinting();
  if (questions.length === 0) return null;
  const inOrder = byFile(questions).flatMap((group) => group.questions);
  const pages = Math.ceil(inOrder.length / questionsPerPage);
  const page = Math.min(asked, pages);
  const shown = printing ? inOrder : inOrder.slice((page - 1) * questionsPerPage, page * questionsPerPage);
  return (
    <section aria-labelledby="questions">
      <h2 id="questions" ref={heading} tabIndex={-1}>
        Questions
      </h2>
      <p>
        {waitingSentence(questions)} Choose what is right, and apply it; a question left at ‘Not now’ goes on
        waiting. Where nobody knows, leave it: a wrong answer makes wrong wear rates.
      </p>
      <LikelierButtons questions={questions} onChoose={choose} />
      {byFile(shown).map((group) => (
        <div key={group.file}>
          <h3>{group.file}</h3>
          {group.questions.map((question) => (
            <QuestionField
              key={question.id}
              question={question}
              chosen={choices.get(question.id) ?? null}
              onChoose={(choice) => choose([question], choice)}
            />
          ))}
        </div>
      ))}
      {pages > 1 && (
        <QuestionPager
          page={page}
          all={inOrder.length}
          onPage={(next) => {
            setAsked(next);
            heading.current?.focus();
          }}
        />
      )}
      <p className="buttons">
        <button type="button" disabled={busy || answers.length === 0} onClick={() => onApply(answers)}>
          Apply {counted(answers.length, 'answer')}
        </button>
        <button type="button" disabled={answers.length === 0} onClick={() => choose(questions, null)}>
          Put all back to ‘Not now’
        </button>
      </p>
      <p role="status" className="screenOnly">
        {chosenSentence(answers.length, questions.length)}
      </p>
    </section>
  );
}
