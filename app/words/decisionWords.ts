import {
  type Action,
  actions,
  type Decision,
  type Doubt,
  type SeriesDecision,
} from '../../lib/analysis/decisions/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatChance, formatDate, formatPercent } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { counted } from './counted';
import { midSentence, seriesName } from './seriesName';

type Characteristics = FleetResult['characteristics'];

/** What stands for 'no verdict' where nothing can be said. */
export const noVerdict = 'no verdict';

/** An action in words, with the day where it has one. */
export function actionWords({
  action,
  bringForwardTo,
}: {
  readonly action: Action | null;
  readonly bringForwardTo: string | null;
}): string {
  if (action === null) return noVerdict;
  return action === 'bring forward' && bringForwardTo !== null
    ? `bring forward to ${formatDate(bringForwardTo)}`
    : action;
}

const doubts: Readonly<Record<Doubt, string>> = {
  'no reading in the run': 'there is no reading in the present run',
  'one reading in the run': 'there is one reading in the present run',
  'wide interval': 'the level is known too loosely',
};

/** Name of what drives an action. */
export function driverWords(drivenBy: string | null, characteristics: Characteristics): string | null {
  if (drivenBy === null) return null;
  return drivenBy === 'rated life' ? drivenBy : midSentence(seriesName(drivenBy, characteristics));
}

/** Why a reading is asked for, and what holds if none is taken. */
function doubtWords({ doubt, bringForwardTo }: SeriesDecision): string | null {
  if (doubt === null) return null;
  const without =
    bringForwardTo === null ? '' : `; without one, bring forward to ${formatDate(bringForwardTo)}`;
  return `a reading now would decide, since ${doubts[doubt]}${without}`;
}

/** Why one limit asks for what it asks: the doubt, the day, or what cannot be told. */
export function limitWhyWords(one: SeriesDecision): string | null {
  const sentences = [doubtWords(one), one.reason === null ? null : rewritten(one.reason)].filter(
    (sentence) => sentence !== null,
  );
  return sentences.length === 0 ? null : sentences.join('; ');
}

/** Why: the driver with its chances, or the reason why nothing can be said. */
export function whyWords(decision: Decision, characteristics: Characteristics): string | null {
  const { drivenBy, series, ratedLifeEnds, reason } = decision;
  const driver = driverWords(drivenBy, characteristics);
  const own = series.find((one) => one.series === drivenBy);
  const sentences = [
    ratedLifeEnds !== null && `the rated life ends on ${formatDate(ratedLifeEnds)}`,
    own !== undefined &&
      `${driver}: chance of passing its limit ${formatChance(own.chanceBefore)} before this overhaul, ${formatChance(own.chanceRunningOn)} before the following one if nothing is fitted`,
    own !== undefined && doubtWords(own),
    reason === null ? null : rewritten(reason),
  ].filter((sentence) => typeof sentence === 'string');
  return sentences.length === 0 ? null : sentences.join('; ');
}

/** Parts that an overhaul needs: '1 × TB-H (limit)'. */
export function partsWords({ parts }: Decision): string | null {
  return parts.length === 0
    ? null
    : parts.map(({ part, pieces, because }) => `${pieces} × ${part} (${because})`).join(', ');
}

/** How many units get which advice: 'Of 51 units, at an accepted risk of 10 %: bring forward 4, fit new part 25, run on 22.' */
export function adviceSentence(decisions: readonly Decision[], acceptedRisk: number): string {
  if (decisions.length === 0) return 'No unit is listed.';
  const counts = actions
    .toReversed()
    .map((action) => ({ action, count: decisions.filter((one) => one.action === action).length }))
    .filter(({ count }) => count > 0)
    .map(({ action, count }) => `${action} ${count}`);
  const none = decisions.filter(({ action }) => action === null).length;
  const listed = [...counts, ...(none > 0 ? [`${noVerdict} ${none}`] : [])].join(', ');
  return `Of ${counted(decisions.length, 'unit')}, at an accepted risk of ${formatPercent(acceptedRisk)}: ${listed}.`;
}
