'use client';

import { startTransition, useEffect, useState } from 'react';
import { answerKey } from '../../lib/analysis/engine/answerKey';
import type { FleetAnswer, FleetQuestion, QuestionWords } from '../../lib/analysis/engine/FleetQuestions';
import type { FleetResult } from '../../lib/analysis/types';
import { useEngine } from './EngineProvider';

/** The state of a question to the worker; while another one is being answered the last answer is at hand as `before`. */
export type Asked<Answer> =
  | { readonly status: 'waiting'; readonly before: Answer | null }
  | { readonly status: 'failed'; readonly message: string }
  | { readonly status: 'answered'; readonly answer: Answer };

interface Given<Answer> {
  readonly fleet: FleetResult;
  readonly key: string;
  readonly asked: Asked<Answer>;
}

/**
 * Asks the worker about the open fleet, again whenever the fleet or the words change; an answer that comes too late is dropped.
 *
 * @param words what the question is about, data only
 */
export function useAsked<Name extends FleetQuestion>(
  fleet: FleetResult,
  question: Name,
  ...words: QuestionWords<Name>
): Asked<FleetAnswer<Name>> {
  const { request, state } = useEngine();
  const [given, setGiven] = useState<Given<FleetAnswer<Name>> | null>(null);
  const key = answerKey(question, words);
  useEffect(() => {
    let stale = false;
    const keep = (asked: Asked<FleetAnswer<Name>>) => {
      // A large answer is drawn in slices between which the page answers.
      if (!stale) startTransition(() => setGiven({ fleet, key, asked }));
    };
    const [name, ...said] = JSON.parse(key) as [Name, ...QuestionWords<Name>];
    request.ask(name, said).then(
      // A worker that has nothing open is opening something: the fleet changes when it has.
      (answer) => answer !== undefined && keep({ status: 'answered', answer }),
      (error: unknown) =>
        keep({
          status: 'failed',
          message: `This could not be computed: ${error instanceof Error ? error.message : String(error)}. Reload the page to try again.`,
        }),
    );
    return () => {
      stale = true;
    };
  }, [request, fleet, key]);
  if (given?.fleet === fleet && given.key === key) return given.asked;
  // What was answered of last time's answer stays until it is answered anew.
  const stands = given?.fleet === fleet || (given?.fleet === state.before && given?.key === key);
  const before = stands && given?.asked.status === 'answered' ? given.asked.answer : null;
  return { status: 'waiting', before };
}
