import type { Question } from '../../lib/analysis/types';
import { kindOf } from '../words/questionWords';

/** Questions of one file. */
export interface FileQuestions {
  readonly file: string;
  readonly questions: readonly Question[];
}

/** Questions of one kind with one likelier choice. */
export interface LikelierGroup {
  readonly kind: string;
  readonly guess: string;
  readonly questions: readonly Question[];
}

type AtLeastOne = [Question, ...Question[]];

function grouped(questions: readonly Question[], key: (question: Question) => string): readonly AtLeastOne[] {
  const groups = new Map<string, AtLeastOne>();
  for (const question of questions) {
    const group = groups.get(key(question));
    if (group === undefined) groups.set(key(question), [question]);
    else group.push(question);
  }
  return [...groups.values()];
}

/** Questions by file, files and questions in order of first appearance. */
export function byFile(questions: readonly Question[]): readonly FileQuestions[] {
  return grouped(questions, (question) => question.file).map((group) => ({
    file: group[0].file,
    questions: group,
  }));
}

/** Questions of the same kind and the same likelier choice, where there are at least two of them. */
export function likelierGroups(questions: readonly Question[]): readonly LikelierGroup[] {
  const guessed = questions.filter(({ choices, guess }) => choices.includes(guess));
  return grouped(guessed, (question) => JSON.stringify([kindOf(question), question.guess]))
    .filter((group) => group.length > 1)
    .map((group) => ({
      kind: kindOf(group[0]),
      guess: group[0].guess,
      questions: group,
    }));
}
