let last: Promise<void> = Promise.resolve();

/** Resolves in the next task; a timer would be held back in a tab that is not looked at. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

/** Does work in a task of its own, after all that was given before: done at once with the rest of a task it would hold the page up. */
export function inTurn<Result>(work: () => Result | Promise<Result>): Promise<Result> {
  const turn = last.then(nextTask);
  last = turn;
  return turn.then(work);
}
