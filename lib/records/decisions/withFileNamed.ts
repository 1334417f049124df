import type { Decision } from './Decision';
import { rulingId } from './rulings';

/** A decision about a file as it is about the same file under another name; its id says the new name, too. */
export function withFileNamed(decision: Decision, nameOf: (file: string) => string): Decision {
  if (!('file' in decision)) return decision;
  const file = nameOf(decision.file);
  if (file === decision.file) return decision;
  if (decision.kind === 'ruling') return { ...decision, file, id: rulingId({ ...decision, file }) };
  if (decision.kind === 'answer') {
    // The id of a question is its kind, file, column and detail: see questionId.
    const kind = decision.id.slice(0, Math.max(0, decision.id.indexOf(' | ')));
    const start = `${kind} | ${decision.file} | `;
    const id = decision.id.startsWith(start)
      ? `${kind} | ${file} | ${decision.id.slice(start.length)}`
      : decision.id;
    return { ...decision, file, id };
  }
  return { ...decision, file };
}
