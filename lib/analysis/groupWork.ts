import { fitWear } from '../stats/wear/fitWear';
import { integrateWear } from '../stats/wear/integrateWear';
import { noForecastReason } from '../stats/wear/noForecastReason';
import type { WearFit, WearPosterior, WearStatistics } from '../stats/wear/types';
import type { MarginQuestion } from './currentLine';
import { marginRow } from './marginRow';
import type { MarginRow } from './types';

/** The wear model of one group and series: data only, so that another thread can hand it over. */
export interface FittedGroup {
  readonly fit: WearFit | null;
  readonly posterior: WearPosterior | null;
  /** Why there is no fit, if there is none. */
  readonly reason: string | null;
}

/** Is told which task is next before it begins; throws to stop. */
export type OnTask = (place: number) => Promise<void>;

/** What is long in an analysis, task by task; answers are in the order of the tasks. */
export interface GroupWork {
  fits(groups: readonly WearStatistics[], onTask: OnTask): Promise<readonly FittedGroup[]>;
  /** Margins of lists of questions; data only, and each list of one group and series, so that little is handed over. */
  margins(
    lists: readonly (readonly MarginQuestion[])[],
    onTask: OnTask,
  ): Promise<readonly (readonly MarginRow[])[]>;
}

/** Fits one group: the same numbers on whichever thread. */
export function fitGroup(statistics: WearStatistics): FittedGroup {
  const reason = noForecastReason(statistics);
  if (reason !== null) return { fit: null, posterior: null, reason };
  const fit = fitWear(statistics);
  return { fit, posterior: integrateWear(statistics, { fitted: fit.ratios }), reason };
}

/** The margins of one list. */
export function marginsOf(questions: readonly MarginQuestion[]): readonly MarginRow[] {
  return questions.map(marginRow);
}

/** One task after another where the analysis runs. */
export const workHere: GroupWork = {
  fits: (groups, onTask) => oneByOne(groups, fitGroup, onTask),
  margins: (lists, onTask) => oneByOne(lists, marginsOf, onTask),
};

async function oneByOne<Task, Answer>(
  tasks: readonly Task[],
  answerTo: (task: Task) => Answer,
  onTask: OnTask,
): Promise<readonly Answer[]> {
  const answers: Answer[] = [];
  for (const [place, task] of tasks.entries()) {
    await onTask(place);
    answers.push(answerTo(task));
  }
  return answers;
}
