'use client';

import { startTransition, useCallback, useEffect, useState } from 'react';
import { answerKey } from '../../lib/analysis/engine/answerKey';
import type { FleetAnswer, FleetQuestion, QuestionWords } from '../../lib/analysis/engine/FleetQuestions';
import type { FleetResult } from '../../lib/analysis/types';
import { useEngine } from './EngineProvider';
import { EngineFailure } from './engineClient';

/** The state of a question to the worker; while another one is being answered the last answer is at hand as `before`. */
export type Asked<Answer> =
  | { readonly status: 'waiting'; readonly before: Answer | null }
  | NotAnswered
  | { readonly status: 'answered'; readonly answer: Answer };

/** A question that came to nothing, and the way to ask it once more. */
export interface NotAnswered {
  readonly status: 'failed';
  readonly message: string;
  readonly tryAgain: () => void;
}

interface Given<Answer> {
  readonly fleet: FleetResult;
  readonly key: string;
  readonly asked: Asked<Answer>;
}

/** What an error says, with a full stop behind it. */
function saidOf(error: unknown): string {
  const said = error instanceof Error ? error.message : String(error);
  return /[.!?]$/.test(said) ? said : `${said}.`;
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
  const { request, state, start } = useEngine();
  const [given, setGiven] = useState<Given<FleetAnswer<Name>> | null>(null);
  const key = answerKey(question, words);
  const [tries, setTries] = useState(0);
  const askAgain = useCallback(() => {
    setGiven(null);
    setTries((before) => before + 1);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whoever tries again asks the same once more.
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
          message: `This could not be computed: ${saidOf(error)}`,
          // A worker that is gone has nothing open: what was open is opened again, and then asked.
          tryAgain: error instanceof EngineFailure ? () => start('open') : askAgain,
        }),
    );
    return () => {
      stale = true;
    };
  }, [request, start, fleet, key, tries, askAgain]);
  if (given?.fleet === fleet && given.key === key) return given.asked;
  // What was answered of last time's answer stays until it is answered anew.
  const stands = given?.fleet === fleet || (given?.fleet === state.before && given?.key === key);
  const before = stands && given?.asked.status === 'answered' ? given.asked.answer : null;
  return { status: 'waiting', before };
}
