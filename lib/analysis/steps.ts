/** Goes through all steps at once. */
export function runThrough<Answer>(steps: Generator<void, Answer>): Answer {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}
