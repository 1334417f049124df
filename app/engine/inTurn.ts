let last: Promise<unknown> = Promise.resolve();

/** Does work in a task of its own, after all that was given before: done at once with the rest of a task it would hold the page up. */
export function inTurn<Result>(work: () => Result | Promise<Result>): Promise<Result> {
  const turn = last.then(() => new Promise<void>((resolve) => setTimeout(resolve)));
  last = turn;
  return turn.then(work);
}
