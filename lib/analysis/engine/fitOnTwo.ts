import { type FitGroups, type FittedGroup, fitGroup } from '../fitGroups';

/** Below this number of runs a second thread takes longer to start than it saves. */
const leastRuns = 2_000;

/** Groups that the helper has at once: it goes on with the next while this thread, deep in a fit, has not heard of the last. */
const inFlight = 3;

/**
 * Fits groups on two threads: this one from the first on, a helper from the last on, until they meet. Which of them fits a
 * group changes no number.
 *
 * @param helper fits one group on another thread; where it fails, this one fits the group
 */
export function fitOnTwo(
  helper: (statistics: Parameters<typeof fitGroup>[0]) => Promise<FittedGroup>,
): FitGroups {
  return async (groups, onGroup) => {
    const fitted: FittedGroup[] = [];
    let [next, end] = [0, groups.length];
    const runs = groups.reduce((sum, { runNames }) => sum + runNames.length, 0);
    const help = async () => {
      while (next < end) {
        end -= 1;
        const place = end;
        const statistics = groups[place] as (typeof groups)[number];
        fitted[place] = await helper(statistics).catch(() => fitGroup(statistics));
      }
    };
    const helping = runs < leastRuns ? [] : Array.from({ length: inFlight }, help);
    // Where this thread is stopped nobody waits for the helper.
    for (const one of helping) one.catch(() => {});
    try {
      while (next < end) {
        const place = next;
        next += 1;
        await onGroup(place);
        fitted[place] = fitGroup(groups[place] as (typeof groups)[number]);
      }
      await Promise.all(helping);
    } finally {
      // The helper begins nothing more where this thread was stopped.
      end = next;
    }
    return fitted;
  };
}
