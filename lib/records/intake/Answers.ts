import type { Question } from './types';

/** The answer given to a question, if there is one. */
export type Answers = (question: Question) => string | undefined;

/** No answers at all. */
export const noAnswers: Answers = () => undefined;

/** Kinds of questions, first part of their ids. */
export type QuestionKind =
  | 'decimal sign'
  | 'date order'
  | 'dates'
  | 'unit of measure'
  | 'viewing end'
  | 'stage'
  | 'scale'
  | 'job dated twice';

/** Id of a question: the same whenever the same file is read again. */
export function questionId(kind: QuestionKind, file: string, column: string, detail = ''): string {
  return [kind, file, column, detail].join(' | ');
}

/** Collects questions while files are read; an answered one is applied and not asked. Takes remarks on whole files, too. */
export class QuestionList {
  readonly questions: Question[] = [];
  private readonly remarks = new Map<string, string[]>();

  constructor(private readonly answers: Answers) {}

  /** Notes how something was settled for a whole file. */
  remark(file: string, sentence: string): void {
    this.remarks.set(file, [...this.remarksOn(file), sentence]);
  }

  /** Remarks on a file, in order. */
  remarksOn(file: string): readonly string[] {
    return this.remarks.get(file) ?? [];
  }

  /** The answer to a question if it is one of its choices; otherwise the question is noted and null returned. */
  ask(question: Question): string | null {
    const answer = this.answers(question);
    if (answer !== undefined && question.choices.includes(answer)) return answer;
    this.questions.push(question);
    return null;
  }
}
