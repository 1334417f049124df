/**
 * Positions whose hours do not fit into a rising order: the fewest whose removal leaves the rest nondecreasing
 * (longest nondecreasing subsequence by patience sorting).
 *
 * Walks from the last entry to the first, so that of two that contradict each other the earlier one is kept.
 *
 * @param hours hours of one unit in order of date
 * @returns indices into `hours`, rising
 */
export function hoursOutOfOrder(hours: readonly number[]): readonly number[] {
  /** tails[k]: the entry with the largest hours that a rising chain of k + 1 entries, read backwards, can end at. */
  const tails: number[] = [];
  const next: number[] = new Array(hours.length).fill(-1);
  for (let index = hours.length - 1; index >= 0; index--) {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((hours[tails[middle] as number] as number) >= (hours[index] as number)) low = middle + 1;
      else high = middle;
    }
    next[index] = low === 0 ? -1 : (tails[low - 1] as number);
    tails[low] = index;
  }
  const kept = new Set<number>();
  for (let at = tails.at(-1) ?? -1; at >= 0; at = next[at] as number) kept.add(at);
  return hours.map((_, index) => index).filter((index) => !kept.has(index));
}
