/** Names a question and what it is about, as text from which both can be read again. */
export function answerKey(question: string, words: readonly unknown[]): string {
  return JSON.stringify([question, ...words]);
}
