import { type PackedRows, rowViews } from './packedRows';
import { packRows } from './packRows';

/** Questions whose answer is a list of rows, of which a page shows a few at a time: an engine a fleet has thousands. */
const listed: ReadonlySet<unknown> = new Set(['decisions']);

interface PackedAnswer {
  readonly packedAnswer: PackedRows;
}

/** The answer to a question as it goes to the page: long lists by column, since row by row they are long in being copied. */
export function packAnswer(question: unknown, answer: unknown): unknown {
  if (!listed.has(question) || !Array.isArray(answer)) return answer;
  return { packedAnswer: packRows(answer) } satisfies PackedAnswer;
}

/** The answer as it was packed; rows of a list are views, see rowViews. */
export function unpackAnswer(answer: unknown): unknown {
  return isPacked(answer) ? rowViews(answer.packedAnswer) : answer;
}

function isPacked(answer: unknown): answer is PackedAnswer {
  return typeof answer === 'object' && answer !== null && 'packedAnswer' in answer;
}
