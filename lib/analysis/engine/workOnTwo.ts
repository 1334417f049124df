import { fitGroup, type GroupWork, marginsOf, type OnTask } from '../groupWork';
import { nextTask } from './nextTask';
import type { SecondThread } from './secondThread';

/** Below this number of runs or questions a second thread takes longer to start than it saves. */
const leastItems = 2_000;

/** Tasks that the second thread has at once: it goes on with the next while this one, deep in a task, has not heard of the last. */
const inFlight = 3;

/** The same work on two threads; which of them does a task changes no number. */
export function workOnTwo(second: SecondThread): GroupWork {
  return {
    fits: (groups, onTask) =>
      onTwo(
        groups,
        ({ runNames }) => runNames.length,
        fitGroup,
        (group) => second.fitGroup(group),
        onTask,
      ),
    margins: (lists, onTask) =>
      onTwo(
        lists,
        ({ length }) => length,
        marginsOf,
        (list) => second.marginsOf(list),
        onTask,
      ),
  };
}

/**
 * Does tasks on two threads: this one from the first on, another from the last on, until they meet.
 *
 * @param sizeOf how many items a task is made of
 * @param there does a task on the other thread; where that fails, this one does it
 */
async function onTwo<Task, Answer>(
  tasks: readonly Task[],
  sizeOf: (task: Task) => number,
  here: (task: Task) => Answer,
  there: (task: Task) => Promise<Answer>,
  onTask: OnTask,
): Promise<readonly Answer[]> {
  const answers: Answer[] = [];
  let [next, end] = [0, tasks.length];
  const items = tasks.reduce((sum, task) => sum + sizeOf(task), 0);
  const help = async () => {
    while (next < end) {
      end -= 1;
      const place = end;
      const task = tasks[place] as Task;
      answers[place] = await there(task).catch(() => here(task));
    }
  };
  const helping = items < leastItems ? [] : Array.from({ length: inFlight }, help);
  // Where this thread is stopped nobody waits for the other.
  for (const one of helping) one.catch(() => {});
  try {
    while (next < end) {
      const place = next;
      next += 1;
      await onTask(place);
      // The other is handed its next task only when its last answer has been heard.
      if (helping.length > 0) await nextTask();
      answers[place] = here(tasks[place] as Task);
    }
    await Promise.all(helping);
  } finally {
    // The other begins nothing more where this one was stopped.
    end = next;
  }
  return answers;
}
