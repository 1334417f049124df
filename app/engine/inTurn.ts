import { nextTask } from '../../lib/analysis/engine/nextTask';

let last: Promise<void> = Promise.resolve();

/** Does work in a task of its own, after all that was given before: done at once with the rest of a task it would hold the page up. */
export function inTurn<Result>(work: () => Result | Promise<Result>): Promise<Result> {
  const turn = last.then(nextTask);
  last = turn;
  return turn.then(work);
}
