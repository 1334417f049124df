/** Gives messages that wait for the worker, a cancel among them, their turn. */
export function yieldToMessages(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}
