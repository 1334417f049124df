import type { Decision, PartWanted } from '../../lib/analysis/decisions/types';
import type { OrderRow, Spares } from '../../lib/analysis/demand/types';
import type { FleetResult } from '../../lib/analysis/types';
import { formatDate, formatFixed, formatPercent, formatPieces } from '../../lib/charts/format';
import { rewritten } from '../../lib/charts/rewritten';
import { counted } from './counted';
import { actionWords, partsWords, whyWords } from './decisionWords';
import { capitalised } from './seriesName';
import { moneyWords, partWords } from './sparesSentence';

/** What to do at the next overhaul, and why. */
export function decisionStepWords(
  decision: Decision | null,
  acceptedRisk: number,
  characteristics: FleetResult['characteristics'],
): string {
  if (decision === null || decision.date === null)
    return `What is lacking: ${rewritten(decision?.reason ?? 'a planned overhaul of this unit')}.`;
  const why = whyWords(decision, characteristics);
  const said = `At the overhaul planned for ${formatDate(decision.date)}, with an accepted risk of ${formatPercent(acceptedRisk)}: ${actionWords(decision)}.`;
  return why === null ? said : `${said} ${capitalised(why)}.`;
}

/** The parts of that overhaul, and what the whole fleet will need of the one that has to be ordered. */
export function partStepWords(
  decision: Decision | null,
  wanted: PartWanted | null,
  order: OrderRow | null,
  { until, draws }: Spares,
): string {
  const parts = decision === null ? null : partsWords(decision);
  const needs = parts === null ? 'The overhaul needs no part.' : `The overhaul needs ${parts}.`;
  if (wanted === null || order === null)
    return `${needs} What is lacking: a part that a limit of any unit calls for and that has to be ordered.`;
  return `${needs} The fleet as a whole needs ${formatFixed(order.demandMean, 1)} of ${partWords(order)} up to ${formatDate(until)} at the mean of ${counted(draws, 'draw')}, and no more than ${formatPieces(order.demandP90)} with a chance of ${formatPercent(0.9)}; ${formatPieces(order.onHand)} on hand, ${formatPieces(order.onOrder)} on order.`;
}

/** How many to order, by which day. */
export function orderStepWords(order: OrderRow | null): string {
  if (order === null) return 'What is lacking: a part to be ordered, so there is no order day.';
  const cost = moneyWords(order.cost, order.currency);
  const day =
    order.orderBy === null ? '' : ` by ${formatDate(order.orderBy)}${order.late ? ', which is past' : ''}`;
  return `${capitalised(rewritten(order.reason))}. Order ${formatPieces(order.quantity)} of ${order.part}${day}${cost === null ? '' : `, for ${cost}`}.`;
}
