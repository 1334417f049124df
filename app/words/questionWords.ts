import type { Question } from '../../lib/analysis/types';
import { formatCount } from '../../lib/charts/format';
import type { QuestionKind } from '../../lib/records/intake/Answers';
import { counted } from './counted';

const kinds = {
  'decimal sign': 'the decimal sign',
  'date order': 'the order of day and month',
  dates: 'numbers that may be dates',
  'unit of measure': 'the unit of measure',
  'viewing end': 'the end that left and right are seen from',
  stage: 'as found or as left',
  scale: 'readings out of scale',
  'job dated twice': 'jobs that seem dated twice',
  'meter event': 'hour meters replaced or corrected, as notes say',
  'unit fitted': 'units fitted, exchanged or moved, as notes say',
  'hours when fitted': 'the hours of units when they were fitted',
  'unit left': 'when units were taken off an engine',
  'run start': 'where first runs start',
  'stages exchanged': 'as found and as left, perhaps exchanged',
  'clock positions exchanged': 'clock positions, perhaps exchanged',
  'copied readings': 'as left readings, perhaps copied',
} satisfies Readonly<Record<QuestionKind, string>>;

/** Kind of a question, the first part of its id. */
export function kindOf({ id }: Question): string {
  return id.split(' | ')[0] ?? id;
}

/** What a kind of questions is about. */
export function kindWords(kind: string): string {
  const words: Readonly<Record<string, string>> = kinds;
  return words[kind] ?? kind;
}

/** Where a question comes from and what waits for it: 'Column ‘Axial play’: 12 cells wait.' */
export function questionPlace({ column, cellsWaiting }: Question): string {
  const place = column === '' ? 'The whole file' : `Column ‘${column}’`;
  return `${place}: ${counted(cellsWaiting, 'cell waits', 'cells wait')}.`;
}

/** A cell can wait for questions of several kinds, and is then counted with each of them. */
function mayCountTwice(questions: readonly Question[]): boolean {
  const kindOfFile = new Map<string, string>();
  return questions.some((question) => {
    const before = kindOfFile.get(question.file) ?? kindOf(question);
    kindOfFile.set(question.file, before);
    return before !== kindOf(question);
  });
}

/** How many questions wait and what they hold back, or null if none does. */
export function waitingSentence(questions: readonly Question[]): string | null {
  if (questions.length === 0) return null;
  const cells = questions.reduce((sum, question) => sum + question.cellsWaiting, 0);
  const most = mayCountTwice(questions) ? 'up to ' : '';
  const until = questions.length === 1 ? 'it is answered' : 'they are answered';
  const held = counted(cells, 'cell is', 'cells are');
  return `${counted(questions.length, 'question waits', 'questions wait')}: ${most}${held} held until ${until}.`;
}

/** How far the answering has come: '2 of 3 questions have an answer that is not applied yet.' */
export function chosenSentence(chosen: number, all: number): string {
  if (chosen === 0) return 'No answer is chosen: nothing would change.';
  const have = chosen === 1 ? 'has' : 'have';
  return `${formatCount(chosen)} of ${counted(all, 'question')} ${have} an answer that is not applied yet.`;
}
