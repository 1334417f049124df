import type { Question } from './types';

/** The answer given to a question, if there is one; the shape is that of the sheet asked about, see sheetShape. */
export type Answers = (question: Question, shape?: string) => string | undefined;

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
  | 'job dated twice'
  | 'meter event'
  | 'unit fitted'
  | 'hours when fitted'
  | 'unit left'
  | 'run start'
  | 'stages exchanged'
  | 'clock positions exchanged'
  | 'copied readings';

/** Kinds that are settled by a form of sheet rather than by the cells of one file: their answers hold for all of its shape. */
const kindsOfForm: ReadonlySet<string> = new Set<QuestionKind>([
  'decimal sign',
  'date order',
  'unit of measure',
  'viewing end',
  'stage',
]);

/**
 * What a question of one file has in common with the same question of another file of the same shape (kind, column,
 * detail), or null if an answer to it says nothing about other files.
 */
export function questionOfForm(id: string, file: string, shape: string): string | null {
  const kind = id.slice(0, Math.max(0, id.indexOf(' | ')));
  const start = `${kind} | ${file} | `;
  return kindsOfForm.has(kind) && id.startsWith(start)
    ? [shape, kind, id.slice(start.length)].join(' | ')
    : null;
}

/** Id of a question: the same whenever the same file is read again. */
export function questionId(kind: QuestionKind, file: string, column: string, detail = ''): string {
  return [kind, file, column, detail].join(' | ');
}

/** Collects questions while files are read; an answered one is applied and not asked. Takes remarks on whole files, too. */
export class QuestionList {
  readonly questions: Question[] = [];
  private readonly remarks = new Map<string, string[]>();
  private readonly shapes = new Map<string, string>();

  constructor(private readonly answers: Answers) {}

  /** Notes the shape of a file, so that answers about its form are found. */
  setShape(file: string, shape: string): void {
    this.shapes.set(file, shape);
  }

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
    const answer = this.answers(question, this.shapes.get(question.file));
    if (answer !== undefined && question.choices.includes(answer)) return answer;
    this.questions.push(question);
    return null;
  }
}
