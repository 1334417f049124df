import type { Effect } from '../../lib/analysis/engine/EngineApi';
import { isAdviceChanged, type Verdict } from '../../lib/analysis/tables/changedVerdicts';
import { formatChance, formatDate } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { counted } from './counted';
import { actionWords } from './decisionWords';

/** How many verdicts edits would change: '4 verdicts of 3 units would change, the advice of 1 unit among them.' */
export function effectSentence({ changed, units, held }: Effect): string {
  const touched = new Set(changed.map(({ unit }) => unit)).size;
  const advised = new Set(changed.filter(isAdviceChanged).map(({ unit }) => unit)).size;
  const advice =
    advised === 0 ? 'no advice among them' : `the advice for ${counted(advised, 'unit')} among them`;
  const verdicts =
    changed.length === 0
      ? `No verdict would change, of ${counted(units, 'unit')}.`
      : `${counted(changed.length, 'verdict')} on ${counted(touched, 'unit')} of ${units} would change, ${advice}.`;
  const reasons = held.map(({ column, raw, reason }) => `${column} ‘${raw}’: ${reason}`).join('; ');
  return held.length === 0
    ? verdicts
    : `${verdicts} ${counted(held.length, 'edited cell or row', 'edited cells or rows')} would be held: ${reasons}.`;
}

/** A verdict in words: advice, chance at the next overhaul, and when the limit is met by the median. */
export function verdictWords(verdict: Verdict | null): string {
  if (verdict === null) return 'no limit, no verdict';
  const { reason, chanceAtNextOverhaul, nextOverhaulDate, chanceNow, dateMedian } = verdict;
  const chance =
    chanceAtNextOverhaul !== null && nextOverhaulDate !== null
      ? `chance ${formatChance(chanceAtNextOverhaul)} by ${formatDate(nextOverhaulDate)}`
      : chanceNow !== null && `chance ${formatChance(chanceNow)} now`;
  const words = [
    verdict.action === null ? 'no advice' : actionWords(verdict),
    reason === null ? null : rewritten(reason),
    chance,
    dateMedian !== null && `limit met by ${formatDate(dateMedian)} (median)`,
  ];
  return words.filter((word) => typeof word === 'string').join('; ');
}
