import { comparePapers } from './comparePapers';
import { type PaperSource, paperOf } from './paperOf';
import { paperSummary } from './paperSummary';
import type { PaperSettings, Report } from './types';

/**
 * The planning paper of a day and what changed since an earlier one, both from the same records: what is dated later than a day
 * is left out of its paper. Plan, stock and undated limits have no history and are those of the files on both.
 *
 * @param on the answers as of a day
 */
export async function reportOf(
  settings: PaperSettings,
  on: (day: string) => Promise<PaperSource>,
): Promise<Report> {
  const { asOf, since } = settings;
  const paper = await paperOf(await on(asOf), settings);
  if (since === null) return { paper, compared: null };
  const before = await paperOf(await on(since), settings);
  return { paper, compared: { since, changes: comparePapers(paperSummary(before), paperSummary(paper)) } };
}
